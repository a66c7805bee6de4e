package chainwright.app.audiofile;

import java.io.IOException;

/** Writes a draft, and makes it the file at the end. */
final class DraftedWriter implements AudioWriter {

  /** Writes a header and knows how the samples follow it. */
  interface Beginning {
    SampleSink begin(AudioFormat format, ByteSink bytes) throws IOException;
  }

  private final OutputDraft draft;
  private final AudioFormat format;
  private final ByteSink bytes;
  private final SampleSink sink;
  private boolean isOpen = true;

  private DraftedWriter(OutputDraft draft, AudioFormat format, ByteSink bytes, SampleSink sink) {
    this.draft = draft;
    this.format = format;
    this.bytes = bytes;
    this.sink = sink;
  }

  static DraftedWriter of(OutputDraft draft, ByteSink bytes, AudioFormat format, Beginning kind)
      throws IOException {
    try {
      return new DraftedWriter(draft, format, bytes, kind.begin(format, bytes));
    } catch (IOException e) {
      throw trouble(draft, bytes, e);
    }
  }

  @Override
  public AudioFormat format() {
    return format;
  }

  @Override
  public void write(double[][] block, int offset, int frames) throws IOException {
    requireOpen();
    Blocks.requireRoom(block, format.channels(), offset, frames);
    try {
      sink.write(block, offset, frames);
    } catch (IOException e) {
      isOpen = false;
      throw trouble(draft, bytes, e);
    }
  }

  @Override
  public WriteSummary finish() throws IOException {
    requireOpen();
    isOpen = false;
    try {
      WriteSummary summary = sink.complete();
      bytes.complete();
      draft.commit();
      return summary;
    } catch (IOException e) {
      throw trouble(draft, bytes, e);
    }
  }

  @Override
  public void close() throws IOException {
    isOpen = false;
    draft.discard();
  }

  private void requireOpen() {
    if (!isOpen) {
      throw new IllegalStateException("the file must be open, but is finished or given up");
    }
  }

  private static OutputFileException trouble(OutputDraft draft, ByteSink bytes, IOException e) {
    try {
      draft.discard();
    } catch (IOException second) {
      e.addSuppressed(second);
    }
    if (e instanceof OutputFileException known) {
      return known;
    }
    return new OutputFileException(
        "`"
            + draft.name()
            + "` cannot be written: "
            + OutputDraft.reason(e)
            + ", after "
            + bytes.position()
            + " bytes; nothing is left of it. Make room, or write to another folder",
        e);
  }
}
