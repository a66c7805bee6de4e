package chainwright.app.workspace;

/**
 * A place between two characters as an editor counts it, such as line 3, character 7.
 *
 * @param line the line, from 0
 * @param character how far into the line, from 0, in the units of a {@link PositionEncoding}
 */
public record TextPosition(int line, int character) {}
