/** A sentence for an error kind. Loaded only when a mark asks for one: no phone needs it in order to answer. */
export async function errorSentence(kind: string): Promise<string> {
  try {
    const { errorKinds } = await import('../../server/protocol/words/errors.ts');
    return errorKinds[kind]?.say ?? '';
  } catch {
    // The network is gone: right and wrong stand without it.
    return '';
  }
}
