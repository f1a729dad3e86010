// The footer's choice of display, remembered in this browser; the server reads the cookie and sets it on the next page.
(() => {
  "use strict";
  const choice = document.querySelector("[data-theme-choice]");
  if (!choice) return;
  choice.hidden = false;
  const select = choice.querySelector("select");
  select.value = document.documentElement.dataset.theme ?? "";
  select.addEventListener("change", () => {
    if (select.value) document.documentElement.dataset.theme = select.value;
    else delete document.documentElement.dataset.theme;
    document.cookie = `theme=${select.value}; path=/; max-age=${select.value ? 31536000 : 0}; samesite=lax`;
  });
})();
