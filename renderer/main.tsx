import '@fontsource-variable/source-sans-3/wght.css';
import '@fontsource/gentium-book-plus/400.css';
import '@fontsource/gentium-book-plus/400-italic.css';
import '@fontsource/gentium-book-plus/700.css';
import './ui/style/tokens.css';
import './ui/style/base.css';
import './ui/style/parts.css';
import './ui/style/masthead.css';
import './ui/style/marks.css';
import './ui/style/frame.css';
import './ui/style/notes.css';
import './ui/style/start.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { openClient } from './client/open-client.ts';
import { App } from './shell/app.tsx';
import { showPreferences } from './ui/preferences.ts';

showPreferences();
const place = document.getElementById('desk');
if (place) {
  createRoot(place).render(
    <StrictMode>
      <App client={openClient()} />
    </StrictMode>,
  );
}
