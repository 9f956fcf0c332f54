import type { UnitName } from '../contract.ts';
import { useSpoken } from '../text/useWords.ts';
import { addFraction, back, FRACTIONS, otherUnit, press } from './keypad.ts';

interface Props {
  readonly text: string;
  readonly units: UnitName;
  readonly type: (text: string) => void;
}

const DIGITS = ['7', '8', '9', '4', '5', '6', '1', '2', '3'];

/** Keys for a thumb: digits, the stroke, a space, fractions of an inch that add up, the other unit. */
export function Keypad({ text, units, type }: Props) {
  const { words: w, mark } = useSpoken();
  const key = (face: string, next: () => string, label?: string, pressed?: boolean) => (
    <button
      key={face}
      type="button"
      // The entry keeps the cursor, so that a keyboard beside the keys goes on typing.
      onPointerDown={(event) => event.preventDefault()}
      onClick={() => type(next())}
      aria-label={label}
      aria-pressed={pressed}
    >
      {face}
    </button>
  );
  const other = units === 'in' ? 'mm' : 'in';
  return (
    <fieldset className="keypad">
      <legend className="only-heard">{w.window.keys}</legend>
      <div className="keypad-digits">
        {DIGITS.map((digit) => key(digit, () => press(text, digit)))}
        {key('/', () => press(text, '/'))}
        {key('0', () => press(text, '0'))}
        {key(mark, () => press(text, mark))}
      </div>
      <div className="keypad-more">
        {FRACTIONS.map((under) =>
          key(`1/${under}`, () => addFraction(text, under), w.window.fraction(`1/${under}`)),
        )}
        {key(w.window.space, () => press(text, ' '))}
        {key(other, () => otherUnit(text, units), undefined, new RegExp(`${other}\\s*$`).test(text))}
        {key(w.window.eraseShort, () => back(text), w.window.erase)}
      </div>
    </fieldset>
  );
}
