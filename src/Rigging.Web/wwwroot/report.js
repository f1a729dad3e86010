// The report where there is no signal. Without this script the form is posted like any other; with it, a report that cannot
// leave the phone is kept here, pictures too, and leaves by itself: from this page, or when it is opened again.
// It carries its own id, so that the server files it once however often it arrives.
(() => {
  "use strict";
  const says = JSON.parse(document.currentScript.dataset.say), filled = (text, ...what) => text.replace(/\{(\d)\}/g, (_, i) => what[i]);
  const PROBE_MS = 6000, RETRY_MS = 15000;
  const person = document.body.dataset.person || "nobody";
  const placeOf = key => `unsent:${person}:${key}`;
  const clockTime = at => new Date(at).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", hour12: false });

  const waiting = {
    read(key) { try { return JSON.parse(localStorage.getItem(placeOf(key))); } catch { return null; } },
    keep(key, kept) { try { localStorage.setItem(placeOf(key), JSON.stringify(kept)); return true; } catch { return false; } },
    drop(key) { try { localStorage.removeItem(placeOf(key)); } catch { /* storage switched off: nothing is kept, nothing to drop */ } }
  };

  // Pictures are too large for the other store.
  const pictures = {
    open: () => new Promise((done, failed) => {
      const asked = indexedDB.open("rigging-report", 1);
      asked.onupgradeneeded = () => asked.result.createObjectStore("pictures");
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => failed(asked.error);
    }),
    async with(mode, use) {
      try {
        const db = await this.open();
        return await new Promise((done, failed) => {
          const turn = db.transaction("pictures", mode), asked = use(turn.objectStore("pictures"));
          turn.oncomplete = () => { db.close(); done(asked.result); };
          turn.onabort = turn.onerror = () => { db.close(); failed(turn.error); };
        });
      } catch { return undefined; }
    },
    keep(key, files) { return this.with("readwrite", store => store.put(files, placeOf(key))); },
    read(key) { return this.with("readonly", store => store.get(placeOf(key))); },
    drop(key) { return this.with("readwrite", store => store.delete(placeOf(key))); }
  };

  const reachable = async () => {
    try {
      return (await fetch(new URL("health/live", document.baseURI), { cache: "no-store", signal: AbortSignal.timeout(PROBE_MS) })).ok;
    } catch { return false; }
  };

  const watch = form => {
    const key = form.dataset.draft, line = form.querySelector("[data-unsent]"), files = form.querySelector("input[type=file]");
    const buttons = [...form.querySelectorAll("button[type=submit]")], busyIs = on => { for (const button of buttons) if (on) button.setAttribute("aria-busy", "true"); else button.removeAttribute("aria-busy"); };
    let timer = 0, busy = false;
    const say = words => { line.textContent = words; line.hidden = !words; if (words) line.scrollIntoView({ block: "center" }); };

    const send = async pressed => {
      if (busy) return;
      busy = true;
      clearTimeout(timer);
      busyIs(true);
      const at = pressed ? Date.now() : waiting.read(key)?.at ?? Date.now();
      const kept = waiting.keep(key, { at });
      if (files.files.length) await pictures.keep(key, [...files.files]);
      if (await reachable()) { form.submit(); return; }
      busy = false;
      busyIs(false);
      say(filled(kept ? says.kept : says.notKept, clockTime(at)));
      timer = setTimeout(() => send(false), RETRY_MS);
    };

    form.addEventListener("submit", event => { event.preventDefault(); send(true); });
    // Back from the browser's own store of pages: nothing is on its way any more.
    addEventListener("pageshow", event => { if (event.persisted) { busy = false; busyIs(false); } });
    addEventListener("online", () => { if (waiting.read(key)) send(false); });

    const again = async () => {
      const left = waiting.read(key);
      if (!left) return;
      // It arrived and came back with something to put right: what the person sees now counts.
      if (form.querySelector("[data-errors]")) { waiting.drop(key); return; }
      const shots = await pictures.read(key);
      if (shots?.length) {
        const transfer = new DataTransfer();
        for (const shot of shots) transfer.items.add(shot);
        files.files = transfer.files;
      }
      const pin = form.elements.namedItem("pin");
      if (pin && !pin.value) { say(filled(says.wantsPin, clockTime(left.at))); return; }
      say(filled(says.goesNow, clockTime(left.at)));
      send(false);
    };
    // After the draft is back in its fields.
    form.addEventListener("draft-restored", again, { once: true });
  };

  const over = [...new URLSearchParams(location.search).getAll("done"), ...[...document.querySelectorAll("[data-draft-done]")].map(done => done.dataset.draftDone)];
  for (const key of over) { waiting.drop(key); pictures.drop(key); }
  for (const form of document.querySelectorAll("form[data-report]")) watch(form);
})();
