// Network first for pages, with the last copy where there is no signal; our own files from the phone.
// EDITION and FILES are put before this by the server: an update brings a new set of files, and the
// pages of the last round stay until newer ones have come.

importScripts("/static/sealing.js");

const KEPT_FILES = `files-${EDITION}`;
const PATIENCE_MS = 4000; // one bar of signal at a hedge is worse than none

addEventListener("install", event => event.waitUntil(install()));
addEventListener("activate", event => event.waitUntil(activate()));
addEventListener("fetch", event => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== location.origin) return;
  if (FILES.includes(url.pathname)) event.respondWith(file(event.request));
  else if (event.request.mode === "navigate") event.respondWith(pageOf(event.request));
});

async function install() {
  const cache = await caches.open(KEPT_FILES);
  await cache.addAll(FILES.map(name => new Request(name, { cache: "reload" })));
  await skipWaiting();
}

async function activate() {
  const names = await caches.keys();
  const old = names.filter(name => name.startsWith("files-") && name !== KEPT_FILES);
  await Promise.all(old.map(name => caches.delete(name)));
  await clients.claim();
  if (old.length) await renewPages();
}

async function renewPages() {
  const cache = await caches.open(sealing.PAGES);
  for (const request of await cache.keys()) {
    const answer = await fetch(request.url, { headers: { Accept: "text/html" } }).catch(() => null);
    if (answer && isWorthKeeping(answer)) await sealing.keep(request, answer);
  }
}

async function file(request) {
  const cache = await caches.open(KEPT_FILES);
  return (await cache.match(request, { ignoreSearch: true })) ?? fetch(request);
}

async function pageOf(request) {
  const cache = await caches.open(sealing.PAGES);
  const copy = await copyOf(cache, request);
  const stop = new AbortController();
  const timer = copy && setTimeout(() => stop.abort(), PATIENCE_MS);
  try {
    const answer = await fetch(request, { signal: stop.signal });
    // only who is not, or no longer, logged in is led there: nothing of the book stays readable
    if (new URL(request.url).pathname === "/login") await sealing.forget();
    if (isWorthKeeping(answer)) await sealing.keep(request.url.split("#")[0], answer.clone()).catch(() => null);
    return answer;
  } catch {
    return copy ?? (await without(cache, request));
  } finally {
    clearTimeout(timer);
  }
}

async function copyOf(cache, request) {
  return sealing.open((await cache.match(request)) ?? (await cache.match(request, { ignoreSearch: true })));
}

async function without(cache, request) {
  const path = new URL(request.url).pathname;
  const rounds = (await cache.keys()).map(kept => new URL(kept.url));
  const last = rounds.filter(url => /^\/round\/[\d-]+$/.test(url.pathname)).pop();
  if (last && ["/", "/round"].includes(path)) return Response.redirect(last.href);
  return (await caches.open(KEPT_FILES)).match("/without-signal");
}

// a redirect is the login page, 202 a round that is still being worked out
function isWorthKeeping(answer) {
  const isPage = (answer.headers.get("Content-Type") ?? "").startsWith("text/html");
  return answer.status === 200 && !answer.redirected && answer.type === "basic" && isPage;
}
