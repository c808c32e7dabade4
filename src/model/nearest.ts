/** The nearest allowed word, for messages about a misspelled name; one function for the whole program. */
export { nearest } from '../reading/nearest.js';
