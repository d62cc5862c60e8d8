// The screen stays awake where the browser can keep it so; it is asked again when the page is back.

export function keepAwake() {
  if (!("wakeLock" in navigator)) return;
  const ask = () => {
    if (document.visibilityState === "visible") navigator.wakeLock.request("screen").catch(() => {});
  };
  document.addEventListener("visibilitychange", ask);
  ask();
}
