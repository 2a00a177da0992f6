import { useState } from 'react';

/** The value, and while there is none the one before; `null` before the first. A value that is the same is the same object. */
export function useLast<T>(value: T | null): T | null {
  const [last, keep] = useState(value);
  if (value !== null && value !== last) keep(() => value);
  return value ?? last;
}
