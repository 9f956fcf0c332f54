import { createContext, useContext } from 'react';
import type { MoneySign, UnitName } from '../contract.ts';

/** The unit lengths are shown in: the job's own, or the page's in the catalogue. */
export const UnitsContext = createContext<UnitName>('in');
export const useUnits = (): UnitName => useContext(UnitsContext);

/** How money is written: the catalogue's currency. */
export const MoneyContext = createContext<MoneySign>({ code: 'USD', symbol: '$', decimals: 2 });
export const useMoneySign = (): MoneySign => useContext(MoneyContext);
