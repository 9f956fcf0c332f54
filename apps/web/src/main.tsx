import { createRoot } from 'react-dom/client';
import { App } from './app/App.tsx';
import { keepPage } from './offline/keepPage.ts';
import './style/tokens.css';
import './style/base.css';
import './style/page.css';
import './style/drawing.css';
import './style/tools.css';
import './style/window.css';
import './style/hold.css';

createRoot(document.getElementById('root')!).render(<App />);
keepPage();
