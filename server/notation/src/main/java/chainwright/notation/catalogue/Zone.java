package chainwright.notation.catalogue;

/**
 * A named region of a source's spectrum, such as sibilance from 4.5 to 10 kHz.
 *
 * @param name the trade's word for it
 * @param lowHz its lower end [Hz], 0 or more
 * @param highHz its upper end [Hz], above {@code lowHz}
 */
public record Zone(String name, double lowHz, double highHz) {}
