export * from './function-record.ts'
export * from './types.ts'
