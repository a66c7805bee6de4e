package chainwright.app.audiofile;

import java.io.IOException;

/** Turns samples into the bytes of one kind of file, of which the header is written already. */
interface SampleSink {

  /** Writes samples. */
  void write(double[][] block, int offset, int frames) throws IOException;

  /** Writes what stands after the samples, and into the header what was not known before. */
  WriteSummary complete() throws IOException;
}
