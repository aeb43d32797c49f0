import fc from 'fast-check'

/** Each mutant meets the property tests anew: fewer cases of each keep a file's run to minutes. */
fc.configureGlobal({ ...fc.readConfigureGlobal(), numRuns: 20 })
