import type { ReservedPlace } from '../contract.ts';
import { useWords } from '../text/useWords.ts';

interface Props {
  readonly places: readonly ReservedPlace[];
  readonly rollWidth: number;
  /** Of the cloth shown, along it. */
  readonly end: number;
}

/** Where nothing may lie: a cross on each, so that it is told without colour. */
export function KeptClear({ places, rollWidth, end }: Props) {
  const w = useWords();
  return places
    .filter((place) => place.rollWidth === rollWidth && place.from < end)
    .map((place, index) => {
      const [to, far] = [Math.min(place.to, end), Math.min(place.far, rollWidth)];
      return (
        <g key={place.id} className="kept-clear">
          <title>{w.reserved.drawn(place.notes || w.reserved.reasons[place.why], index + 1)}</title>
          <rect
            x={place.from}
            y={place.near}
            width={to - place.from}
            height={Math.max(0, far - place.near)}
          />
          <path d={`M${place.from} ${place.near}L${to} ${far}M${place.from} ${far}L${to} ${place.near}`} />
        </g>
      );
    });
}
