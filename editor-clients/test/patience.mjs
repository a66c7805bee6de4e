// How long a driver waits for what must come.

export const patience = Number(process.env.PATIENCE_MS ?? 20000);

/** The value of `probe` once it is truthy; its last value when patience runs out. */
export async function awaited(probe) {
  const end = Date.now() + patience;
  for (;;) {
    const value = await probe();
    if (value || Date.now() > end) {
      return value;
    }
    await new Promise(done => setTimeout(done, 100));
  }
}
