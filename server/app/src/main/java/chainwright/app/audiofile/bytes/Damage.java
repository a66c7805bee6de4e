package chainwright.app.audiofile.bytes;

/**
 * A part that could not be read, and is silent in its place.
 *
 * @param frame the first frame of the part
 * @param frames how many, 0 if it is not known which
 * @param reason what is wrong, as a part of a sentence
 */
public record Damage(long frame, long frames, String reason) {}
