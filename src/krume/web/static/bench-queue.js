// What was said and is not yet kept in the book: it waits on this device and is sent in its order.

const { book } = document.documentElement.dataset;

/** Where what waits of a book's benches begins. */
export const START = `krume bench ${book} `;

export class Queue {
  constructor(name, address, hears) {
    this.place = START + name;
    this.address = address;
    this.hears = hears;
    this.busy = false;
    this.lost = false;
  }

  get many() {
    try {
      const kept = JSON.parse(localStorage.getItem(this.place) ?? "[]");
      return Array.isArray(kept) ? kept : [];
    } catch {
      return this.memory ?? [];
    }
  }

  set many(said) {
    this.memory = said;
    try {
      if (said.length) localStorage.setItem(this.place, JSON.stringify(said));
      else localStorage.removeItem(this.place);
    } catch {
      // No room, or none allowed: this page still holds them.
    }
  }

  add(said) {
    this.many = [...this.many, said];
  }

  drop(ids) {
    const gone = new Set(ids);
    this.many = this.many.filter((each) => !gone.has(each.id));
  }

  /** Send all that waits, once; what is refused is dropped, and said. */
  async send(key) {
    if (this.busy) return;
    this.busy = true;
    try {
      let waiting = this.many;
      while (waiting.length) {
        const answer = await this.post(key, waiting);
        if (answer === null) return;
        const refused = answer.status >= 400;
        if (refused && answer.status >= 500) return;
        if (refused && waiting.length > 1) {
          for (const one of waiting) {
            const single = await this.post(key, [one]);
            if (single === null || single.status >= 500) return;
            this.drop([one.id]);
            this.hears(single);
          }
        } else {
          this.drop(waiting.map((each) => each.id));
          this.hears(answer);
        }
        waiting = this.many;
      }
    } finally {
      this.busy = false;
    }
  }

  async post(key, said) {
    return this.ask(`${this.address}/said`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ key, said }),
    });
  }

  async look() {
    const answer = await this.ask(`${this.address}/state`, {});
    if (answer !== null && answer.status < 400) this.hears(answer);
  }

  async ask(address, options) {
    try {
      const response = await fetch(address, { ...options, cache: "no-store" });
      // What the worker had kept is no answer of the book's: the network is gone all the same.
      const kept = response.headers.get("x-krume-kept") === "yes";
      this.lost = kept;
      return { status: response.status, body: await response.json(), kept };
    } catch {
      this.lost = true;
      return null;
    }
  }
}
