package chainwright.app.render;

import chainwright.app.audiofile.FileKind;
import chainwright.app.audiofile.SampleKind;
import chainwright.dsp.signal.ProcessorDesign;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * What is to be rendered, and how it is to be written.
 *
 * @param design what processes the take, at the take's sample rate
 * @param isMadeStereo whether a take of one channel becomes two channels before it is processed
 * @param fromFrame the first frame of the take that is rendered
 * @param toFrame the frame after the last; empty for the end of the take and what goes on sounding
 *     after it
 * @param policy at what level it is written
 * @param declaredLufs the loudness that the chain is meant for
 * @param ceilingDbtp what the true peak may rise to where the level is raised to match
 * @param output the file to be written
 * @param kind what kind of file it is
 * @param samples how its samples are stored
 * @param mayReplace whether a file that is there may be replaced
 */
public record RenderOrder(
    ProcessorDesign design,
    boolean isMadeStereo,
    long fromFrame,
    OptionalLong toFrame,
    LevelPolicy policy,
    OptionalDouble declaredLufs,
    double ceilingDbtp,
    Path output,
    FileKind kind,
    SampleKind samples,
    boolean mayReplace) {}
