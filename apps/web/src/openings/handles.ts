// What is handled on an opening's drawing, and what it comes to: fetched after the first drawing.
export { Consequences } from '../app/Consequences.tsx';
export { CornerPulls } from './CornerPulls.tsx';
export { HandledObstructions } from './HandledObstructions.tsx';
