package chainwright.app.cli;

/**
 * A sine.
 *
 * @param hertz its frequency [Hz]
 * @param levelDbfs its level [dBFS]
 */
record Tone(double hertz, double levelDbfs) {}
