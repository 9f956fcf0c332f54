/** A radius may be entered as nought: a sharp corner. */
export const isZero = (text: string): boolean => /^\s*0+([.,]0+)?\s*(mm|cm|m|in|"|″)?\s*$/.test(text);
