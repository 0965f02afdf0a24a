// Runs in the page's process, in a world of its own. Bundled into one CommonJS file, as the sandbox asks.

import { contextBridge, ipcRenderer, webUtils } from 'electron';
import { buildBridge } from './build-bridge.ts';
import { CHANNELS } from './channels.ts';

contextBridge.exposeInMainWorld('routemark', buildBridge(ipcRenderer));

// Paths of what the teacher drops go straight to the main process, which hands the page tokens for them. A drop that
// the page makes up is not trusted, and a file that the page made has no path.
window.addEventListener(
  'drop',
  (event) => {
    if (!event.isTrusted) return;
    const paths = [...(event.dataTransfer?.files ?? [])].map((file) => webUtils.getPathForFile(file));
    ipcRenderer.send(CHANNELS.dropped, paths);
  },
  { capture: true },
);
