/** The inner classes of the library, which has no types that its exports lead to. */
declare module 'fake-indexeddb/lib/FDBDatabase' {
  const FDBDatabase: { prototype: object }
  export default FDBDatabase
}
declare module 'fake-indexeddb/lib/FDBTransaction' {
  const FDBTransaction: { prototype: object }
  export default FDBTransaction
}
declare module 'fake-indexeddb/lib/FDBFactory' {
  const FDBFactory: new () => IDBFactory
  export default FDBFactory
}
