export * from './diagnostic.ts'
export * from './function-record.ts'
export * from './types.ts'
