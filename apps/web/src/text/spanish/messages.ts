export { spanish as messages } from '../../contract.ts';
