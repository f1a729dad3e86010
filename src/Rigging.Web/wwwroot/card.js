// The stopwatch on the flight test card, for the second person. What it reads goes into the card's own fields, so that the
// page works without it; the draft script keeps them.
(() => {
  "use strict";
  const says = JSON.parse(document.currentScript.dataset.say), filled = (text, ...what) => text.replace(/\{(\d)\}/g, (_, i) => what[i]);
  const form = document.querySelector("form[data-card]");
  if (!form) return;
  const ENOUGH_S = 20, TICK_MS = 100;
  const second = form.elements.namedItem("second");

  const watch = box => {
    const part = box.closest("[data-point]"), time = box.querySelector("[data-time]"), go = box.querySelector("[data-go]"), said = box.querySelector("[data-said]");
    const marks = [...box.querySelectorAll("[data-deg]")], sides = [...box.querySelectorAll("[data-last]")];
    const start = go.textContent;
    let began = 0, tick = 0, told = false;
    const running = () => began > 0;
    const pressed = () => sides.find(button => button.getAttribute("aria-pressed") === "true"), side = () => pressed().dataset.last, sideWord = () => pressed().textContent.trim();
    const show = () => {
      for (const mark of marks) mark.disabled = !running();
      for (const button of sides) button.disabled = running();
      go.textContent = running() ? says.again : start;
      box.classList.toggle("running", running());
    };
    const elapsed = () => (performance.now() - began) / 1000;
    const stop = () => { clearInterval(tick); began = 0; show(); };
    const freeRow = () => [...part.querySelectorAll(`[data-repeat="${side()}"]`)].find(row => [...row.querySelectorAll("input, select")].every(field => !field.value));

    go.addEventListener("click", () => {
      if (running()) { stop(); time.textContent = "0.0"; said.textContent = says.notCounted; return; }
      if (!freeRow()) { said.textContent = filled(says.allDone, sideWord()); return; }
      began = performance.now();
      told = false;
      said.textContent = "";
      tick = setInterval(() => {
        time.textContent = elapsed().toFixed(1);
        if (!told && elapsed() >= ENOUGH_S) { told = true; said.textContent = filled(says.enough, ENOUGH_S); navigator.vibrate?.(300); }
      }, TICK_MS);
      show();
    });
    for (const mark of marks)
      mark.addEventListener("click", () => {
        if (!running()) return;
        const seconds = elapsed().toFixed(1), row = freeRow();
        stop();
        time.textContent = seconds;
        const [s, deg, wing] = row.querySelectorAll("input, select");
        [s.value, deg.value, wing.value] = [seconds, mark.dataset.wing === "level" ? "" : mark.dataset.deg, mark.dataset.wing];
        wing.dispatchEvent(new Event("change", { bubbles: true }));
        said.textContent = filled(says.took, seconds, mark.textContent.trim().toLowerCase(), sideWord());
      });
    for (const button of sides) button.addEventListener("click", () => { for (const other of sides) other.setAttribute("aria-pressed", String(other === button)); });
    show();
    return { hide: hidden => { if (hidden && running()) stop(); box.hidden = hidden; } };
  };

  const watches = [...form.querySelectorAll("[data-watch]")].map(watch);
  const follow = () => { for (const one of watches) one.hide(!second.checked); };
  second.addEventListener("change", follow);
  form.addEventListener("draft-restored", follow);
  follow();
})();
