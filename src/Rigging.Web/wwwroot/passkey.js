// A button with data-passkey="new" or "ask" asks this site for a challenge, the browser for its owner's answer, and posts the answer with its form.
(() => {
  "use strict";
  if (!window.PublicKeyCredential?.parseRequestOptionsFromJSON) return;

  const answerTo = async (asks, form) => {
    const token = form.elements.namedItem("__RequestVerificationToken");
    const reply = await fetch(new URL(`passkeys/${asks}`, document.baseURI), { method: "POST", credentials: "same-origin", redirect: "manual", headers: { "RequestVerificationToken": token.value } });
    if (!reply.ok) throw new Error(`The server answered ${reply.status}.`);
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
        state.textContent = error.name === "NotAllowedError" ? "The browser got no answer: nothing was sent. Try again, or use your password." : `That did not work: ${error.message}`;
        state.hidden = false;
        button.disabled = false;
      }
    });
  }
})();
