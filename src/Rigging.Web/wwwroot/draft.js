// Keeps what a person types. Any <form data-draft="KEY"> is posted to /drafts/KEY as JSON shortly after each change;
// without a connection (or after the sign-in expired) it stays in this browser until it can be sent.
// A page that has taken the form in carries data-draft-done="KEY", or has done=KEY in its address, which clears the browser's copy.
(() => {
  "use strict";
  const says = JSON.parse(document.currentScript.dataset.say), filled = (text, ...what) => text.replace(/\{(\d)\}/g, (_, i) => what[i]);
  const PAUSE_MS = 800, RETRY_MS = 15000, KEEP_DAYS = 14;
  const person = document.body.dataset.person || "nobody", visitor = person === "nobody";
  const placeOf = key => `draft:${person}:${key}`;
  const clockTime = at => new Date(at).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", hour12: false });

  const device = {
    read(key) {
      try {
        const kept = JSON.parse(localStorage.getItem(placeOf(key)));
        return kept && Date.now() - kept.at < KEEP_DAYS * 864e5 ? kept : null;
      } catch { return null; }
    },
    keep(key, kept) { try { localStorage.setItem(placeOf(key), JSON.stringify(kept)); return true; } catch { return false; } },
    drop(key) { try { localStorage.removeItem(placeOf(key)); } catch { /* storage switched off: nothing is kept, nothing to drop */ } }
  };

  // Secrets, files and the framework's own fields never go into a draft.
  const drafted = field => field.name && !["password", "file", "hidden", "submit", "button"].includes(field.type) && !field.closest("[data-no-draft]");

  const fieldsOf = form => {
    const values = {};
    for (const field of form.elements) {
      if (!drafted(field)) continue;
      if (field.type === "radio") { if (field.checked) values[field.name] = field.value; }
      else if (field.type === "checkbox") (values[field.name] ??= []).push(...(field.checked ? [field.value] : []));
      else if (field.multiple) values[field.name] = [...field.selectedOptions].map(option => option.value);
      else values[field.name] = field.value;
    }
    return values;
  };

  const fill = (form, values) => {
    for (const field of form.elements) {
      if (!drafted(field) || !(field.name in values)) continue;
      const value = values[field.name];
      if (field.type === "radio") field.checked = value === field.value;
      else if (field.type === "checkbox") field.checked = Array.isArray(value) && value.includes(field.value);
      else if (field.multiple) for (const option of field.options) option.selected = Array.isArray(value) && value.includes(option.value);
      else field.value = value;
    }
    // What came back must be in sight.
    for (const part of form.querySelectorAll("details"))
      if ([...part.querySelectorAll("input, select, textarea")].some(field => field.type === "radio" || field.type === "checkbox" ? field.checked : field.value)) part.open = true;
  };

  const keepDraftOf = form => {
    const key = form.dataset.draft;
    const address = new URL(`drafts/${encodeURIComponent(key)}`, document.baseURI);
    let state = form.querySelector(".draft-state");
    if (!state) { state = document.createElement("p"); state.className = "draft-state"; form.append(state); }
    state.setAttribute("role", "status");
    let timer = 0, asked = 0, touched = false, unsent = false, sending = null;
    const say = (words, kept) => { state.textContent = words; if (kept) state.dataset.kept = kept; };

    const send = async () => {
      clearTimeout(timer);
      const mine = ++asked, kept = { at: Date.now(), fields: fieldsOf(form) };
      const onDevice = device.keep(key, kept);
      if (visitor) { say(onDevice ? filled(says.here, clockTime(kept.at)) : says.nowhere, onDevice ? "here" : "device"); return; }
      let why = says.noConnection;
      sending = new AbortController();
      try {
        const token = form.elements.namedItem("__RequestVerificationToken") ?? document.querySelector("input[name=__RequestVerificationToken]");
        const answer = await fetch(address, {
          method: "POST", keepalive: true, redirect: "manual", credentials: "same-origin", signal: sending.signal, body: JSON.stringify(kept.fields),
          headers: { "Content-Type": "application/json", "RequestVerificationToken": token ? token.value : "" }
        });
        if (answer.ok) {
          if (mine === asked) { unsent = false; device.drop(key); say(filled(says.saved, clockTime(kept.at)), "server"); }
          return;
        }
        why = answer.type === "opaqueredirect" || answer.status === 401 ? says.signedOut : filled(says.answered, answer.status);
      } catch { /* no answer at all: the words below say so */ }
      if (mine !== asked) return;
      say(filled(onDevice ? says.notSavedKept : says.notSaved, why), "device");
      timer = setTimeout(send, RETRY_MS);
    };

    const changed = event => {
      if (!drafted(event.target)) return;
      touched = unsent = true;
      clearTimeout(timer);
      timer = setTimeout(send, PAUSE_MS);
    };

    const restore = async () => {
      // A page that came back with errors already shows what was typed, and newer.
      if (form.querySelector("[data-errors]") || form.dataset.draftRestore === "off") return;
      const kept = device.read(key);
      if (kept) { fill(form, kept.fields); unsent = true; say(filled(says.restored, clockTime(kept.at)), "device"); return send(); }
      if (visitor) return;
      try {
        const answer = await fetch(address, { redirect: "manual", credentials: "same-origin", headers: { "Accept": "application/json" } });
        if (answer.status !== 200) return;
        const values = await answer.json();
        if (touched) return;
        fill(form, values);
        say(says.back, "server");
      } catch { /* no draft to be had: the form stays as served */ }
    };

    form.addEventListener("input", changed);
    form.addEventListener("change", changed);
    addEventListener("online", () => { if (state.dataset.kept === "device") send(); });
    addEventListener("pagehide", () => { if (unsent) send(); });
    form.addEventListener("submit", () => {
      clearTimeout(timer);
      sending?.abort();
      asked++;
      if (unsent) device.keep(key, { at: Date.now(), fields: fieldsOf(form) });
      unsent = false;
    });
    restore().finally(() => form.dispatchEvent(new Event("draft-restored")));
  };

  for (const taken of document.querySelectorAll("[data-draft-done]")) device.drop(taken.dataset.draftDone);
  const here = new URL(location.href), done = here.searchParams.getAll("done");
  for (const key of done) device.drop(key);
  if (done.length) { here.searchParams.delete("done"); history.replaceState(history.state, "", here); }
  for (const form of document.querySelectorAll("form[data-draft]")) keepDraftOf(form);
})();
