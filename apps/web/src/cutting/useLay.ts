import { useMemo, useState } from 'react';
import {
  type CutPiece,
  drawPlaces,
  type LaidPlace,
  type LayFrame,
  type LayPlacement,
  type LayPlan,
  type LayRefusal,
  laidPlaces,
  pushPlaces,
  tryPlaces,
} from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { useCatalogue, useJob, useWork } from '../job/work.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { type PutDown, putDown } from './layEdits.ts';

/** One lay as the page shows and changes it. */
export interface LayOnPage {
  readonly frame: LayFrame;
  readonly places: readonly LaidPlace[];
  readonly drawn: readonly LayPlacement[];
  /** The chosen piece, as its index in `places`; null for none. */
  readonly chosen: number | null;
  readonly choose: (index: number | null) => void;
  /** What was said of the last move. */
  readonly said: string;
  readonly sayOf: (down: PutDown) => string;
  readonly nameOf: (place: LaidPlace) => string;
  /** Puts a piece down; says why it cannot lie there, or null. */
  readonly put: (index: number, to: LaidPlace) => string | null;
  readonly take: (places: readonly LaidPlace[]) => void;
  readonly hold: (held: (place: LaidPlace, index: number) => boolean) => void;
  /** The rest is laid anew about what is held. */
  readonly layRest: () => void;
  /** All pieces slide together; says why they cannot, where they lie as no lay may. */
  readonly push: () => void;
  /** The program's own lay. */
  readonly letGo: () => void;
}

/** What was done by hand over a plan's lay, and after how many undos. */
interface Done {
  readonly over: LayPlan;
  readonly turns: number;
  readonly places: readonly LaidPlace[];
}

/** null while the cloth of the lay is not in the catalogue. */
export function useLay(lay: LayPlan, allPieces: readonly CutPiece[]): LayOnPage | null {
  const w = useWords();
  const units = useUnits();
  const { job } = useWork();
  const fabric = useCatalogue(({ fabrics }) => fabrics.find(({ id }) => id === lay.fabric));
  const openings = useJob((state) => state.document.openings);
  const reservedPlaces = useJob((state) => state.document.reservedPlaces);
  const frame = useMemo((): LayFrame | null => {
    if (!fabric) return null;
    const pieces = allPieces.filter((piece) => piece.fabric === fabric.id);
    const reserved = (reservedPlaces ?? []).filter((place) => place.fabric === fabric.id);
    return { fabric, rollWidth: lay.rollWidth, pieces, spacing: lay.spacing, reserved };
  }, [fabric, allPieces, lay, reservedPlaces]);
  const planned = useMemo(() => laidPlaces(lay, allPieces), [lay, allPieces]);
  // What was done since the plan was made, until the plan has followed.
  const [done, setDone] = useState<Done>();
  const turns = useJob((state) => state.turns);
  const [chosen, choose] = useState<number | null>(null);
  const [said, say] = useState('');
  const places = done?.over === lay && done.turns === turns ? done.places : planned;
  const drawn = useMemo(() => (frame ? drawPlaces(frame, places) : []), [frame, places]);
  if (!frame) return null;

  const openingName = (id: string) => openings.find((one) => one.id === id)?.name ?? id;
  const nameOf = (place: LaidPlace) => w.lay.piece(place.of, openingName);
  const save = (key: string, kept: readonly LaidPlace[] | null) => {
    job.edit(`lay.${lay.fabric}.${key}`, (draft) => {
      const others = (draft.laysByHand ?? []).filter((one) => one.fabric !== lay.fabric);
      const own = kept ? [{ fabric: lay.fabric, rollWidth: lay.rollWidth, places: [...kept] }] : [];
      const all = [...others, ...own];
      if (all.length > 0) draft.laysByHand = all;
      else delete draft.laysByHand;
    });
    job.settle();
  };
  const sayOf = (down: PutDown): string => {
    if (down.kind === 'free') return w.lay.free;
    return down.kind === 'makesWay' ? w.lay.makesWay : sayRefusal(down.refusal);
  };
  const sayRefusal = (refusal: LayRefusal): string => {
    if (refusal.code === 'LAY_OUTSIDE_CLOTH') return w.lay.outside[refusal.edge];
    if (refusal.code === 'LAY_MEETS_RESERVED') return w.reserved.meets;
    if ('first' in refusal) {
      const other = places.find((_, k) => {
        const at = drawn[k];
        const { first, second } = refusal;
        const isChosen = k === chosen;
        return (
          !isChosen && at && [first, second].some((one) => one.pieceId === at.piece && one.copy === at.copy)
        );
      });
      return w.lay.meets(other ? nameOf(other) : '');
    }
    return w.lay.notSo;
  };
  return {
    frame,
    places,
    drawn,
    chosen: chosen !== null && chosen < places.length ? chosen : null,
    choose: (index) => {
      choose(index);
      say('');
    },
    said,
    sayOf,
    nameOf,
    put: (index, to) => {
      const down = putDown(frame, places, drawn, index, to);
      const sentence = sayOf(down);
      say(sentence);
      if (down.kind === 'refused') return sentence;
      setDone({
        over: lay,
        turns,
        places: places.map((place, k) => (k === index ? { ...to, held: true } : place)),
      });
      save(`${index}`, down.places);
      return null;
    },
    take: (taken) => {
      setDone({ over: lay, turns, places: taken });
      save('take', taken);
    },
    hold: (held) => {
      const next = places.map((place, k) => ({ ...place, held: held(place, k) }));
      setDone({ over: lay, turns, places: next });
      save('hold', next);
    },
    layRest: () =>
      save(
        'rest',
        places.filter((place) => place.held),
      ),
    push: () => {
      const pushed = pushPlaces(frame, places);
      if (!pushed.ok) return say(w.lay.pushNot);
      const [before, after] = [places, pushed.value].map((all) => tryPlaces(frame, all));
      const shorter = before!.ok && after!.ok ? before!.value - after!.value : 0;
      setDone({ over: lay, turns, places: pushed.value });
      save('push', pushed.value);
      say(shorter > 0.05 ? w.lay.pushed(showLength(shorter, units)) : w.lay.pushedSame);
    },
    letGo: () => {
      setDone(undefined);
      save('own', null);
    },
  };
}
