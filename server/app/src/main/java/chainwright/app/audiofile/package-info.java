/**
 * Audio files: what is recorded, block by block, and what is rendered, whole or not at all.
 *
 * <p><b>Reading.</b> {@link chainwright.app.audiofile.AudioFiles#open} looks at a file's content,
 * never at its ending: WAV (also EXTENSIBLE, RF64, BW64), AIFF and AIFF-C, FLAC, Ogg Vorbis. A
 * reader gives samples as doubles, a plane a channel, and its memory does not grow with the length
 * of the file.
 *
 * <p><b>Scale.</b> An integer of <i>b</i> bits is divided by 2<sup>b-1</sup>, so -1.0 is the lowest
 * integer and the highest lies one step under 1.0; every integer of up to 32 bits is exact. Writing
 * multiplies by the same power, rounds to the nearest integer (halves to even) and holds what lies
 * outside at the highest or lowest integer; how many samples were held is reported. Floating-point
 * files keep their numbers as they are, above full scale too.
 *
 * <p><b>What is no sound</b> (no number, infinite, more than 200 dB above full scale) becomes
 * silence in {@link chainwright.app.audiofile.RepairedReader}, through which every take of a render
 * is read, so that one such sample does not cost the rest; it says how many there were, and when.
 *
 * <p><b>What a header says is checked against what the file holds.</b> No memory is reserved on a
 * header's word. Where the file can be read all the same (broken off, never finished, sizes that
 * lie), the reader repairs and says so in {@link chainwright.app.audiofile.AudioReader#warnings};
 * where not, opening ends in an {@link chainwright.app.audiofile.AudioFileException} that says what
 * was expected, what was found and what to do.
 *
 * <p><b>Writing.</b> A writer fills a draft beside the file and moves it into place when it is
 * complete, in one step. Until then the file does not exist, or is the old one; a draft that a kill
 * left behind ends in {@code .unfinished}. Files are opened for reading or created anew, never
 * opened for changing.
 *
 * <p>Tags and pictures are not kept.
 */
@NullMarked
package chainwright.app.audiofile;

import org.jspecify.annotations.NullMarked;
