// A page beside the scale: it says what a hand does, at once, with or without the network.

import { keepAwake } from "./bench-awake.js";
import { asOf, isKept, keepPages, keepState } from "./bench-kept.js";
import { Queue } from "./bench-queue.js";

const RETRY_MS = 2000;

export function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

export class Side {
  /** `draw` is called whenever something changed, `refused` with what the book would not keep. */
  constructor(draw, refused = () => {}) {
    this.root = document.getElementById("bench");
    this.page = document.querySelector(".bench");
    const { name, address, state } = this.root.dataset;
    this.state = JSON.parse(state);
    this.address = address;
    this.key = this.state.key || newId();
    this.draw = () => { this.tellLost(); draw(); };
    this.refused = refused;
    this.ahead = 0;
    this.wished = "";
    this.queue = new Queue(name, address, (answer) => this.heard(answer));
    document.addEventListener("click", (event) => this.clicked(event));
    addEventListener("online", () => this.send());
    addEventListener("offline", () => { this.queue.lost = true; this.draw(); });
    setInterval(() => this.again(), RETRY_MS);
    keepAwake(this.page.querySelector("[data-x=dark]"));
    keepPages(address);
  }

  async begin() {
    this.draw();
    this.page.dataset.ready = "yes";
    await this.queue.look();
    await this.send();
  }

  get many() {
    return this.queue.many;
  }

  /** This moment by the book's clock. */
  now() {
    return Date.now() + this.ahead;
  }

  heard(answer) {
    if (answer.status >= 400) {
      this.refused(answer.body);
    } else {
      this.state = answer.body;
      this.key = this.state.key || this.key;
      if (!answer.kept) {
        this.ahead = Date.parse(this.state.now) - Date.now();
        if (this.state.state === "open") keepState(this.address, this.state);
      }
    }
    this.draw();
  }

  /** Say one thing: it is kept here at once, drawn, and sent. */
  say(said) {
    const id = newId();
    const at = new Date(this.now()).toISOString();
    this.queue.add({ id, at, late: this.queue.lost, ...said });
    this.draw();
    return this.send();
  }

  async send() {
    await this.queue.send(this.key);
    this.draw();
    if (this.wished) await this.go(this.wished);
  }

  async again() {
    if (this.many.length) await this.send();
    else if (this.queue.lost) { await this.queue.look(); this.draw(); }
  }

  /** On to another page: once all is kept, or to one that opens without the network. */
  async go(href) {
    const way = new URL(href, location.href).href;
    const isReady = this.queue.lost ? await isKept(way) : this.many.length === 0;
    this.wished = isReady ? "" : way;
    if (isReady) location.assign(way);
  }

  clicked(event) {
    const link = event.target.closest("a[href]");
    if (!link || event.defaultPrevented || !(this.queue.lost || this.many.length)) return;
    event.preventDefault();
    this.go(link.href);
  }

  tellLost() {
    this.page.querySelector("[data-x=lost]").hidden = !this.queue.lost;
    this.page.querySelector("[data-x=as-of]").textContent = asOf(this.state.now);
  }
}
