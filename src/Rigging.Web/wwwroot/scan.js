// A button with data-scan-into="ID" reads a QR code with the camera into the field of that id, where the browser can. Elsewhere it stays hidden and the number is typed.
(() => {
  "use strict";
  const says = JSON.parse(document.currentScript.dataset.say);
  if (!("BarcodeDetector" in window) || !navigator.mediaDevices?.getUserMedia) return;
  const show = () => { for (const button of document.querySelectorAll("[data-scan-into][hidden]")) button.hidden = false; };
  new MutationObserver(show).observe(document.body, { childList: true, subtree: true });
  show();

  const scan = async button => {
    const field = document.getElementById(button.dataset.scanInto);
    const words = button.textContent;
    let stream;
    try {
      stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
    } catch {
      button.textContent = says.noCamera;
      return;
    }
    const view = document.createElement("video");
    view.className = "scan-view";
    view.muted = view.playsInline = true;
    view.srcObject = stream;
    const stop = document.createElement("button");
    stop.type = "button";
    stop.textContent = says.stop;
    button.after(view, stop);
    button.disabled = true;
    button.textContent = says.hold;
    await view.play();
    const reader = new BarcodeDetector({ formats: ["qr_code", "code_128", "data_matrix"] });
    let going = true;
    const end = () => { going = false; for (const track of stream.getTracks()) track.stop(); view.remove(); stop.remove(); button.disabled = false; button.textContent = words; };
    stop.addEventListener("click", end);
    const look = async () => {
      if (!going || !button.isConnected) { if (going) end(); return; }
      const [found] = await reader.detect(view).catch(() => []);
      if (!found) { requestAnimationFrame(look); return; }
      end();
      field.value = found.rawValue;
      field.dispatchEvent(new Event("input", { bubbles: true }));
      field.focus();
    };
    look();
  };
  document.addEventListener("click", event => { const button = event.target.closest("[data-scan-into]"); if (button && !button.disabled) scan(button); });
})();
