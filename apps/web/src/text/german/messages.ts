export { german as messages } from '../../contract.ts';
