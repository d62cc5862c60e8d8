// The weights read aloud, by a voice of this device alone; off until it is asked for.

const PLACE = "krume aloud";

export class Voice {
  constructor(button) {
    this.button = button;
    this.on = false;
    if (!("speechSynthesis" in window)) return;
    try { this.on = localStorage.getItem(PLACE) === "yes"; } catch { this.on = false; }
    this.find();
    speechSynthesis.addEventListener?.("voiceschanged", () => this.find());
    button.addEventListener("click", () => this.turn());
  }

  /** Only voices that need no network count. */
  find() {
    const own = speechSynthesis.getVoices().filter((voice) => voice.localService);
    this.voice = own.find((voice) => voice.lang.startsWith("en")) ?? null;
    this.button.hidden = !this.voice;
    this.show();
  }

  turn() {
    this.on = !this.on;
    try { localStorage.setItem(PLACE, this.on ? "yes" : "no"); } catch { /* only this page, then */ }
    this.show();
    if (this.on) this.say("Weights are read aloud.");
  }

  show() {
    this.button.setAttribute("aria-pressed", String(this.on));
  }

  say(text) {
    if (!this.on || !this.voice || text === this.last) return;
    this.last = text;
    speechSynthesis.cancel();
    const words = new SpeechSynthesisUtterance(text);
    words.voice = this.voice;
    speechSynthesis.speak(words);
  }
}
