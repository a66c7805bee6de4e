/**
 * The Free Lossless Audio Codec, from bytes to integers and back.
 *
 * <p>It knows no files: bytes come through {@link chainwright.app.audiofile.bytes.SeekableBytes}.
 *
 * <p>Source: RFC 9639, "Free Lossless Audio Codec (FLAC)" (2024); section numbers in this package
 * are its own.
 */
@NullMarked
package chainwright.app.audiofile.flac;

import org.jspecify.annotations.NullMarked;
