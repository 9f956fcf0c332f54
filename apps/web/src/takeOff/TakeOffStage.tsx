import { Late } from '../app/Late.tsx';
import type { TakeOffLine, TakeOffPlan } from '../contract.ts';
import { FigureValue } from '../fields/FigureValue.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { usePlan } from '../job/work.ts';
import { local } from '../text/decimals.ts';
import { showLength, showRun } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';

/** What the job uses, what is bought for it, and the minutes it takes. */
export function TakeOffStage() {
  const w = useWords();
  const takeOff = usePlan((state) => state.late?.takeOff);
  return (
    <Late>
      <div className="stage stage-single">
        <h2>{w.takeOff.title}</h2>
        {takeOff && takeOff.materials.length > 0 ? (
          <>
            <Materials takeOff={takeOff} />
            <Labour takeOff={takeOff} />
          </>
        ) : (
          <p className="empty">{w.takeOff.empty}</p>
        )}
      </div>
    </Late>
  );
}

function Materials({ takeOff }: { readonly takeOff: TakeOffPlan }) {
  const w = useWords();
  return (
    <div className="table-frame">
      <table>
        <caption>{w.takeOff.materials}</caption>
        <thead>
          <tr>
            <th scope="col">{w.takeOff.item}</th>
            <th scope="col" className="number">
              {w.takeOff.uses}
            </th>
            <th scope="col" className="number">
              {w.takeOff.buys}
            </th>
            <th scope="col" className="number">
              {w.takeOff.left}
            </th>
            <th scope="col" className="number">
              {w.takeOff.costUsed}
            </th>
            <th scope="col" className="number">
              {w.takeOff.costBought}
            </th>
            <th scope="col" className="number">
              {w.takeOff.costCharged}
            </th>
          </tr>
        </thead>
        <tbody>
          {takeOff.materials.map((line) => (
            <Material key={`${line.kind}.${line.item}.${line.pack.price}`} line={line} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Longer than this, a length is read in yards or metres, mm. */
const LONG = 2000;

function Material({ line }: { readonly line: TakeOffLine }) {
  const w = useWords();
  const units = useUnits();
  const amount = (value: number) =>
    line.used.unit === 'count' ? `${value}` : value > LONG ? showRun(value, units) : showLength(value, units);
  return (
    <tr>
      <th scope="row">
        <small className="kind">{w.takeOff.kind[line.kind]}</small> {line.name}
      </th>
      <td className="number">
        <FigureValue figure={line.used} text={amount(line.used.value)} />
      </td>
      <td className="number">
        <FigureValue
          figure={line.packs}
          text={w.takeOff.pack(`${line.packs.value}`, amount(line.pack.quantity))}
        />
      </td>
      <td className="number">{amount(line.left)}</td>
      <td className="number">
        <FigureValue figure={line.costUsed} />
      </td>
      <td className="number">
        <FigureValue figure={line.costBought} />
      </td>
      <td className="number">
        <FigureValue figure={line.costCharged} />
      </td>
    </tr>
  );
}

function Labour({ takeOff }: { readonly takeOff: TakeOffPlan }) {
  const w = useWords();
  return (
    <div className="table-frame">
      <table>
        <caption>{w.takeOff.labour}</caption>
        <thead>
          <tr>
            <th scope="col">{w.takeOff.operation}</th>
            <th scope="col" className="number">
              {w.takeOff.times}
            </th>
            <th scope="col" className="number">
              {w.takeOff.minutes}
            </th>
          </tr>
        </thead>
        <tbody>
          {takeOff.labour.map((line) => (
            <tr key={line.operation}>
              <th scope="row">{line.name}</th>
              <td className="number">{local(`${Number(line.times.toFixed(1))}`)}</td>
              <td className="number">
                <FigureValue figure={line.minutes} />
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={2}>
              {w.takeOff.all}
            </th>
            <td className="number">
              <FigureValue figure={takeOff.minutes} />
            </td>
          </tr>
        </tfoot>
      </table>
      <p className="about">{w.takeOff.minutesAbout}</p>
    </div>
  );
}
