/**
 * What a value is: frequencies, levels, gains, times and the other quantities a chain is written
 * in.
 *
 * <p>Every type is an immutable record that holds its value in one base unit, named by its accessor
 * ({@code hertz()}, {@code seconds()}). Verbs: {@code of…} makes, {@code parse} reads, {@code to…}
 * converts, {@code with…} copies with a change, {@code is…} asks. {@code toString} gives the
 * notation's canonical spelling. No argument and no result is null.
 */
@NullMarked
package chainwright.quantity;

import org.jspecify.annotations.NullMarked;
