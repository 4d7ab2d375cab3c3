// To the next hive or the one before with a swipe; the big arrows do the same.

const FAR_PX = 90;
const LEVEL = 2.5; // this much more sideways than up or down, or it is scrolling
let start = null;

const hive = document.querySelector("article.sheet");
hive.addEventListener("touchstart", event => {
  start = event.touches.length === 1 ? event.touches[0] : null;
}, { passive: true });
hive.addEventListener("touchend", event => {
  if (!start) return;
  const [dx, dy] = ["clientX", "clientY"].map(axis => event.changedTouches[0][axis] - start[axis]);
  if (Math.abs(dx) > FAR_PX && Math.abs(dx) > LEVEL * Math.abs(dy))
    document.querySelector(dx < 0 ? "a[rel=next]" : "a[rel=prev]")?.click();
});
