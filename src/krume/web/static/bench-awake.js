// The screen stays awake where the browser can keep it so; it is asked again when the page is back.

/** `words` stand where a screen may go dark: what to do about it. */
export function keepAwake(words) {
  const tell = (isDark) => { if (words) words.hidden = !isDark; };
  if (!("wakeLock" in navigator)) {
    tell(true);
    return;
  }
  const ask = async () => {
    if (document.visibilityState !== "visible") return;
    try {
      await navigator.wakeLock.request("screen");
      tell(false);
    } catch {
      tell(true);
    }
  };
  document.addEventListener("visibilitychange", ask);
  ask();
}
