import { describe, expect, it } from 'vitest';
import { checkHeadModel } from '../../src/model/read.ts';

describe('format of a model', () => {
  const refusal = (flathead: unknown): unknown => {
    try {
      checkHeadModel({ flathead });
      return null;
    } catch (thrown) {
      return thrown;
    }
  };

  it('is refused with its number and a remedy when it is newer', () => {
    expect(refusal(2)).toMatchObject({
      code: 'SCHEMA',
      path: 'flathead',
      message: expect.stringMatching(/format 2; this program reads up to 1\. Open it with a newer version/),
    });
  });

  it('that is no whole number above 1 is wrong, not newer', () => {
    for (const wrong of [0, 1.5, '2', null])
      expect(refusal(wrong)).toMatchObject({ code: 'SCHEMA', message: expect.not.stringContaining('newer') });
  });
});
