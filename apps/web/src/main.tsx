import { createRoot } from 'react-dom/client';
import { App } from './app/App.tsx';
import { keepPage } from './offline/keepPage.ts';
import { languageHere, speak } from './text/speak.ts';
import './style/tokens.css';
import './style/base.css';
import './style/page.css';
import './style/drawing.css';
import './style/tools.css';
import './style/window.css';
import './style/hold.css';

const show = () => createRoot(document.getElementById('root')!).render(<App />);

// The words come before the first drawing, so that no English flashes by; without them the page is in English.
speak(languageHere()).then(show, show);
keepPage();
