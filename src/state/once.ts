/** Gives the same answer for the same object, made once and kept as long as that object is. */
export function oncePer<A extends object, R>(make: (of: A) => R): (of: A) => R {
  const known = new WeakMap<A, R>();
  return (of) => {
    const made = known.get(of) ?? make(of);
    known.set(of, made);
    return made;
  };
}
