import { app, type Session, session } from "electron";
import { mayNavigate, mayUse, NEW_WINDOW } from "./policy/decisions.ts";

/** Sets the refusals for every web contents and session there will ever be. Call before the first window is made. */
export function lockDown(): void {
  app.enableSandbox();
  app.on("web-contents-created", (_event, contents) => {
    contents.setWindowOpenHandler(() => NEW_WINDOW);
    contents.on("will-attach-webview", (event) => event.preventDefault());
    for (const name of ["will-navigate", "will-frame-navigate", "will-redirect"] as const) {
      // The three differ in their types only.
      contents.on(name as "will-navigate", (event) => {
        if (!mayNavigate(event.url)) event.preventDefault();
      });
    }
  });
  app.on("session-created", refusePermissions);
  app.on("certificate-error", (event, _contents, _url, _error, _certificate, answer) => {
    event.preventDefault();
    answer(false);
  });
  void app.whenReady().then(() => refusePermissions(session.defaultSession));
}

function refusePermissions(one: Session): void {
  one.setPermissionRequestHandler((_contents, permission, answer) => answer(mayUse(permission)));
  one.setPermissionCheckHandler((_contents, permission) => mayUse(permission));
  one.setDevicePermissionHandler(() => mayUse("device"));
  one.setDisplayMediaRequestHandler((_request, answer) => answer({}));
  one.on("will-download", (event) => event.preventDefault());
}
