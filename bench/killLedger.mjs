/**
 * What a person typed, in order, and what the page said of it. A state is all fields together, after one entry: what is
 * found later must be one of the states since the last the page said to be kept, whole.
 */
export function ledger(first) {
  let states = [first];
  /** Place of the last state that was said to be kept. */
  let kept = 0;
  const sums = {
    ...{ typed: 0, said: 0, saidAway: 0 },
    ...{ checks: 0, checkedAway: 0, checkedBack: 0, checkedServer: 0 },
  };
  const nameOf = { away: 'checkedAway', back: 'checkedBack', 'at the server': 'checkedServer' };
  return {
    typed: () => sums.typed,
    saidCount: () => sums.said,
    sums: () => ({ ...sums }),
    /** Before it is typed: from now on it may be there, or not. Gives its place. */
    type: (field, value) => {
      sums.typed++;
      return states.push(states.at(-1).with(field, value)) - 1;
    },
    said: (place, away) => {
      sums.said++;
      if (away) sums.saidAway++;
      kept = Math.max(kept, place);
    },
    /** Faults, none where all is well; what was found is what the next entries go on from. */
    check: (found, when) => {
      sums.checks++;
      sums[nameOf[when]]++;
      const may = states.slice(kept);
      const isThere = may.some((state) => state.every((value, field) => value === found[field]));
      const fault = isThere ? [] : [{ when, found, said: may[0], later: may.slice(1) }];
      [states, kept] = [[found], 0];
      return fault;
    },
  };
}
