import { EventEmitter } from "node:events";

type Handler = (...args: never[]) => unknown;

/** Electron's parts as far as our main process touches them; it notes what was set. */
export function fakeElectron(userData: string) {
  const handlers = new Map<string, Handler>();
  const note = (name: string) => (handler: Handler) => void handlers.set(name, handler);
  const defaultSession = Object.assign(new EventEmitter(), {
    setPermissionRequestHandler: note("permission request"),
    setPermissionCheckHandler: note("permission check"),
    setDevicePermissionHandler: note("device"),
    setDisplayMediaRequestHandler: note("display media"),
  });
  const app = Object.assign(new EventEmitter(), {
    isPackaged: true,
    enableSandbox: () => handlers.set("sandbox", () => true),
    requestSingleInstanceLock: () => true,
    getPath: () => userData,
    getVersion: () => "1.2.3",
    isReady: () => true,
    whenReady: async () => {},
    addRecentDocument: () => {},
    quit: () => app.emit("quit called"),
    exit: () => {},
  });
  const windows: FakeWindow[] = [];
  class BrowserWindow extends FakeWindow {
    constructor(options: unknown) {
      super(options);
      windows.push(this);
      app.emit("web-contents-created", {}, this.webContents);
    }
  }
  const display = { id: 1, workArea: { x: 0, y: 0, width: 1920, height: 1080 } };
  return {
    app,
    BrowserWindow,
    contextBridge: { exposeInMainWorld: () => {} },
    dialog: {
      showOpenDialog: async () => ({ canceled: true, filePaths: [] }),
      showSaveDialog: async () => ({ canceled: true, filePath: "" }),
      showMessageBoxSync: () => 1,
      showErrorBox: () => {},
    },
    ipcMain: { handle: (channel: string, handler: Handler) => handlers.set(channel, handler) },
    Menu: { buildFromTemplate: (template: unknown) => template, setApplicationMenu: note("menu") },
    nativeTheme: { shouldUseDarkColors: true },
    protocol: {
      registerSchemesAsPrivileged: note("scheme"),
      handle: (scheme: string, handler: Handler) => handlers.set(`scheme ${scheme}`, handler),
    },
    screen: { getPrimaryDisplay: () => display, getAllDisplays: () => [display] },
    session: { defaultSession },
    shell: { showItemInFolder: () => {} },
    handlers,
    windows,
  };
}

/** A window that shows nothing. */
class FakeWindow extends EventEmitter {
  readonly sent: unknown[][] = [];
  readonly loaded: string[] = [];
  focused = 0;
  opener: Handler = () => {};
  readonly webContents = Object.assign(new EventEmitter(), {
    send: (...message: unknown[]) => this.sent.push(message),
    setWindowOpenHandler: (handler: Handler) => {
      this.opener = handler;
    },
  });

  constructor(readonly options: unknown) {
    super();
  }

  async loadURL(url: string): Promise<void> {
    this.loaded.push(url);
  }

  show(): void {}
  focus(): void {
    this.focused += 1;
  }
  isMinimized = (): boolean => false;
  isMaximized = (): boolean => true;
  isFullScreen = (): boolean => false;
  getNormalBounds = () => ({ x: 5, y: 6, width: 1300, height: 800 });
}
