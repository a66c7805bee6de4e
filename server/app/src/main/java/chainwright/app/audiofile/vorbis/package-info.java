/**
 * Ogg Vorbis: pages and packets are read here, and a library decodes the packets, to 16 bits.
 *
 * <p>The library, J-Ogg by Tor-Einar Jarnbjo (kept by Stephen Gold), believes what a setup header
 * says, so that is checked first. It knows no files here: bytes come through {@link
 * chainwright.app.audiofile.bytes.SeekableBytes}.
 *
 * <p>Source: RFC 3533, "The Ogg Encapsulation Format Version 0"; Xiph.Org Foundation, "Vorbis I
 * specification", both from memory.
 */
@NullMarked
package chainwright.app.audiofile.vorbis;

import org.jspecify.annotations.NullMarked;
