/** Version of the solver, as in its package.json: a number without its version can't be repeated. */
export const VERSION = '0.1.0';
