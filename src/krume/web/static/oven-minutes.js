// Whole minutes and hours on the clock: sums alone, of plain values.

const PASSED = ["over", "since", "probe"];

// Whether the minutes of a kind have passed, and are not awaited.
export const hasPassed = (kind) => PASSED.includes(kind);

// Whole minutes to a moment, or since it; nothing less than none.
export function minutesOf(now, until, kind) {
  const minutes = (until - now) / 60000;
  return Math.max(0, hasPassed(kind) ? Math.floor(-minutes) : Math.ceil(minutes));
}

// A time of day some minutes later, past midnight too.
export function clockOf(text, minutes) {
  const [hour, minute] = text.split(":").map(Number);
  const all = (hour * 60 + minute + minutes) % 1440;
  return `${Math.floor(all / 60)}:${String(all % 60).padStart(2, "0")}`;
}
