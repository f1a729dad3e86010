// A button with data-passkey="new" or "ask" asks this site for a challenge, the browser for its owner's answer, and posts the answer with its form.
(() => {
  "use strict";
  const says = JSON.parse(document.currentScript.dataset.say), filled = (text, ...what) => text.replace(/\{(\d)\}/g, (_, i) => what[i]);
  if (!window.PublicKeyCredential?.parseRequestOptionsFromJSON) return;

  const answerTo = async (asks, form) => {
    const token = form.elements.namedItem("__RequestVerificationToken");
    const reply = await fetch(new URL(`passkeys/${asks}`, document.baseURI), { method: "POST", credentials: "same-origin", redirect: "manual", headers: { "RequestVerificationToken": token.value } });
    if (!reply.ok) throw new Error(filled(says.answered, reply.status));
    const challenge = await reply.json();
    return asks === "new"
      ? navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(challenge) })
      : navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(challenge) });
  };

  for (const button of document.querySelectorAll("button[data-passkey]")) {
    const form = button.form, state = form.querySelector("[data-passkey-state]");
    button.hidden = false;
    button.addEventListener("click", async () => {
      button.disabled = true;
      state.hidden = true;
      try {
        const answer = await answerTo(button.dataset.passkey, form);
        form.querySelector("[data-passkey-answer]").value = JSON.stringify(answer.toJSON());
        form.submit();
      } catch (error) {
        state.textContent = error.name === "NotAllowedError" ? says.noAnswer : filled(says.failed, error.message);
        state.hidden = false;
        button.disabled = false;
      }
    });
  }
})();
