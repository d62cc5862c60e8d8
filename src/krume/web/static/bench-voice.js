// The weights read aloud, by a voice of this device alone; off until it is asked for.

const PLACE = "krume aloud";
const OWN = "en";

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

  /** A voice of the person's own language, else an English one; only such as need no network. */
  find() {
    const own = speechSynthesis.getVoices().filter((voice) => voice.localService);
    const tongue = (tag) => tag.toLowerCase().split(/[-_]/)[0];
    const wanted = [...(navigator.languages ?? [navigator.language]), OWN].map(tongue);
    this.voice = wanted.map((tag) => own.find((each) => tongue(each.lang) === tag)).find(Boolean) ?? null;
    this.isOwn = this.voice !== null && tongue(this.voice.lang) === OWN;
    this.button.hidden = !this.voice;
    this.show();
  }

  turn() {
    this.on = !this.on;
    try { localStorage.setItem(PLACE, this.on ? "yes" : "no"); } catch { /* only this page, then */ }
    this.show();
    if (this.on) this.speak(this.last || (this.isOwn ? "Weights are read aloud." : ""));
  }

  show() {
    this.button.setAttribute("aria-pressed", String(this.on));
  }

  /** The sentence in English; in another language its number alone, as that language says it. */
  say(text, value = null) {
    const words = this.isOwn ? text : value === null ? "" : value.toLocaleString(this.voice?.lang);
    if (words === this.last) return;
    this.last = words;
    if (this.on && words) this.speak(words);
  }

  speak(words) {
    if (!this.voice || !words) return;
    speechSynthesis.cancel();
    const said = new SpeechSynthesisUtterance(words);
    said.voice = this.voice;
    said.lang = this.voice.lang;
    speechSynthesis.speak(said);
  }
}
