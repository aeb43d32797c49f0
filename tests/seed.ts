import fc from 'fast-check'

/** The same made-up cases at every run, so that a change is judged by itself; `SEED=7 npm test` looks elsewhere. */
fc.configureGlobal({ seed: Number(process.env.SEED ?? 20261125) })
