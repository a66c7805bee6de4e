package chainwright.app.assist;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every place of the grammar ({@code chain.ebnf}, "What may stand where"), and what can be written
 * there. The caret is {@code |}, a line's end {@code ~}; what is offered must be there in this
 * order, what follows {@code !} must not.
 */
class CompletingTest {

  private static final String OTHERS =
      "~}~~bus plate {~  to mix~}~~bus mix {~}~~chain guide {~  group kit~}~~preset guard {~}~";

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "the top of a file; |; import, session, preset, chain, bus ! bell, note",
        "a word at the top; ch|; chain ! source",
        "the top behind a session; session \"x\" {~}~|; chain ! session",
        "a name to be invented; chain |; ! lead, bypassed",
        "behind the name of a chain; chain lead |; bypassed, deliberate ! as",
        "a rule for a chain; chain lead deliberate |; over-steep-slope ! bypassed",
        "behind a title; session \"x\" |; ! {",
        "in a session; session \"x\" {~  |; sample-rate, alignment, mains, tempo, listeners, intent ! bell",
        "a fact that is written; session \"x\" {~  mains 50 Hz~  |; tempo, intent ! mains",
        "a sample rate; session \"x\" {~  sample-rate |; 48 kHz, 44.1 kHz, 96 kHz",
        "the unit of a sample rate; session \"x\" {~  sample-rate 48 |; kHz ! Hz, ms",
        "an alignment; session \"x\" {~  alignment |; 0 dBu = -18 dBFS, 0 dBu = -20 dBFS",
        "its analogue unit; session \"x\" {~  alignment 4 |; dBu ! dBFS",
        "its other side; session \"x\" {~  alignment 0 dBu |; = -18 dBFS, = -20 dBFS",
        "its digital level; session \"x\" {~  alignment 0 dBu = |; -18 dBFS, -20 dBFS",
        "its digital unit; session \"x\" {~  alignment 0 dBu = -18 |; dBFS ! dBu",
        "the mains; session \"x\" {~  mains |; 50 Hz, 60 Hz ! kHz",
        "a tempo's unit; session \"x\" {~  tempo 92 |; bpm ! Hz",
        "listeners; session \"x\" {~  listeners |; adults, minors",
        "the intent of a session; session \"x\" {~  intent |; natural, dense, aggressive",
      })
  void session_everyPlace_isCompleted(String place, String marked, String expected) {
    check(place, marked, expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "in a chain; |; source, spill, take, lowest-note, group, intent, to, send, max-true-peak, loudness, listen, high-pass, apply, insert, parallel, mid-side, multiband, during, note ! import, tempo, path",
        "declared once; source bass~  |; spill, take ! source",
        "above a stage; |~  bell 1 kHz -2 dB; source, bell",
        "below a stage; bell 1 kHz -2 dB~  |; high-shelf, listen, note ! source, to",
        "a source; source |; lead-vocal, other ! bell",
        "behind a source; source bass |; ! bass, bell",
        "spill; spill |; plate, guide, acoustic-guitar ! here",
        "more spill; spill guide |; plate, bass ! guide",
        "its level's unit; spill guide -18 |; dB ! dBFS, Hz, plate",
        "behind its level; spill guide -18 dB |; ! bass, dB",
        "a passage of a take; take \"a.wav\" 0:12 |; to ! s",
        "a unit in a passage; take \"a.wav\" 12 |; to, s ! Hz",
        "the unit of its end; take \"a.wav\" 12 to 48 |; s ! to",
        "the lowest note; source bass~  lowest-note |; E1, F1 ! Hz",
        "the lowest note's unit; lowest-note 82 |; Hz ! dB, kHz",
        "a group; group |; kit",
        "a bus; to |; plate, mix ! guide, here",
        "behind a bus; to mix |; fader ! plate",
        "a fader; to mix fader |; 0 dB",
        "a fader's unit; to mix fader -3 |; dB ! dBu",
        "a send's bus; send |; plate, mix ! guide",
        "a send's level; send plate |; -14 dB ! post-fader",
        "a send's unit; send plate -14 |; dB ! Hz",
        "where a send is taken; send plate -14 dB |; post-fader, pre-fader ! -14 dB",
        "the intent of a chain; intent |; natural, dense, aggressive",
        "the highest true peak; max-true-peak |; -1 dBTP",
        "its unit; max-true-peak -1 |; dBTP ! dBFS",
        "loudness; loudness |; -23 LUFS, -16 LUFS",
        "its unit; loudness -16 |; LUFS ! LU",
        "a passage to listen to; listen 0:31 |; to",
        "a note; note |; ! bell",
        "inside a text; note \"|; ! bell",
        "a comment; bell 1 kHz # |; ! dB",
        "prose; > |; ! bell",
        "behind a block; parallel { path \"dry\" } |; ! bell",
      })
  void declaration_everyPlace_isCompleted(String place, String marked, String expected) {
    check(place, "chain here {~  " + marked + OTHERS, expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "positional settings; source lead-vocal~  high-pass |; 75 Hz, 12 dB/oct, butterworth, Q, as, bypassed, deliberate ! threshold, cutoff",
        "a written value; high-pass 66 Hz |; 12 dB/oct, linkwitz-riley ! 75 Hz",
        "a value further on; high-pass | 18 dB/oct; 80 Hz ! 12 dB/oct, Q",
        "a bare number; high-pass 18 |; Hz, dB/oct ! ms, Q",
        "a bare number that fits one unit; high-pass 66 |; Hz ! dB/oct",
        "a bare number that is touched; high-pass 66|; 66 Hz ! 66 dB/oct, Q",
        "a bare slope; high-pass 66 Hz 18 |; dB/oct ! Hz",
        "a slope that does not exist; high-pass 66 Hz 17|; ! 17 dB/oct",
        "a unit that is begun; high-pass 66 H|; Hz",
        "a number that begins a value; source lead-vocal~  high-pass 7|; 7 Hz, 75 Hz ! 110 Hz",
        "a minus by a word processor; bell 1 kHz \u22122|; -2 dB",
        "a named setting; compressor |; threshold, detector, ratio, attack, key, as ! 3:1, -20 dBFS",
        "a setting that nothing switches on; high-pass 66 Hz 18 dB/oct |; butterworth ! normalised, Q",
        "one that a word switches on; high-pass 66 Hz family bessel |; normalised ! family",
        "one that a slope switches on; high-pass 66 Hz 12 dB/oct |; Q ! normalised",
        "those of one detector; compressor detector programme |; fast, slow ! release, peak",
        "those of the detector by omission; compressor |; release ! rms-window",
        "those of one character; saturation character tape |; head-bump ! asymmetry",
        "a value without a name that would be idle; de-ess mode broadband |; threshold ! 24 dB/oct",
        "its value; source bass~  compressor threshold -20 dBFS ratio |; 4:1, 2:1 ! attack",
        "a ratio; compressor ratio 3|; 3:1 ! 3 dB",
        "the unit of a time; compressor attack 12 |; ms, us ! Hz, dB, s",
        "a word that a setting takes; compressor detector |; peak, rms, programme ! ratio",
        "behind a value; compressor threshold -20 dBFS |; ratio, attack ! threshold, -30 dBFS",
        "a continued line; compressor threshold -20 dBFS~    ... |; ratio, attack ! bell, threshold",
        "a plain number; bell 1 kHz -2 dB Q |; 1.4, 3 ! Hz",
        "behind a plain number; bell 1 kHz -2 dB Q 1.4 |; as, bypassed ! Q, Hz",
        "a boost; bell 1 kHz +2 dB Q |; 0.7",
        "a band; de-ess band |; 4 to 10 kHz, 4.5 to 8 kHz ! 4 kHz",
        "a unit that touches its number; de-ess band 5.5k|; kHz ! to",
        "half a band; de-ess band 5.5 |; to 10 kHz, to, kHz ! ms, Hz",
        "the end of a band; de-ess band 5.5 to |; 10 kHz ! to",
        "the unit of a band; de-ess band 5.5 to 9 |; kHz ! Hz, to",
        "a key; compressor threshold -20 dBFS key |; plate, mix, guide ! here",
        "a microphone; align 1 ms with |; guide ! here",
        "a label; bell 1 kHz -2 dB as |; ! bell",
        "behind a label; bell 1 kHz -2 dB as mud |; bypassed, deliberate ! Q, as",
        "a rule; bell 1 kHz deliberate |; narrow-boost, over-steep-slope ! bell",
        "a reason; bell 1 kHz deliberate narrow-boost |; ! over-steep-slope",
        "a stage's block; compressor threshold -20 dBFS {~    |; side-chain, note ! bell",
        "a block without a detector; bell 1 kHz -2 dB {~    |; note ! side-chain",
        "a side-chain; compressor threshold -20 dBFS {~    side-chain {~      |; high-pass, bell ! apply, source",
        "a ride's time; ride 31 |; to, s",
        "a ride's gain; ride 0:31 to 0:32 |; 0 dB, -3 dB, +3 dB, fade",
        "a required word; saturation |; symmetric, tape, drive",
      })
  void stage_everyPlace_isCompleted(String place, String marked, String expected) {
    check(place, "chain here {~  " + marked + OTHERS, expected);
  }

  @Test
  void value_ofAStage_comesWithWhatItDoesTooMuchOfItItsRangeAndTheSource() {
    checkKnown(
        "source bass~  compressor threshold -20 dBFS ratio |",
        "4:1",
        "ratio, usual for bass",
        "How many dB more at the input give one dB more at the output, above the threshold.",
        "Too much of it: Flat and small, dull onsets, audible pumping; low notes distort when attack"
            + " and release are both short.",
        "For bass: usual 3:1 to 6:1, cautious 2:1 to 4:1, extreme at or above 12:1.",
        "Source of the range: R. Izhaki, Mixing Audio (from memory), and 3 more: `chainwright explain"
            + " compressor ratio`.");
    checkKnown(
        "compressor threshold -20 dBFS detector |",
        "rms",
        "detector",
        "What it follows: the peaks, the RMS level, or the RMS level with a release that slows down the"
            + " longer it has been compressing.",
        "Too much of it: Flat and small, dull onsets, audible pumping; low notes distort when attack"
            + " and release are both short.");
  }

  private static void checkKnown(String marked, String text, String detail, String... known) {
    Proposal proposal =
        Caret.in("chain here {\n  " + marked.replace("~", "\n") + "\n}\n")
            .answer()
            .proposals()
            .stream()
            .filter(one -> one.text().equals(text))
            .findFirst()
            .orElseThrow();
    assertThat(proposal.detail()).isEqualTo(detail);
    assertThat(proposal.paragraphs()).containsExactly(known);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "a preset; apply |; guard ! bell, mix",
        "behind a preset; apply guard |; as, bypassed, deliberate ! guard",
        "an insert; insert \"desk\" |; send, return, latency, clip-level, headroom, noise, printed, as ! Hz",
        "an insert's level; insert \"desk\" send |; 0 dBu",
        "behind a flag; insert \"desk\" printed |; send ! printed",
        "in an insert; insert \"desk\" {~    |; bell, note ! source, listen",
        "in parallel; parallel {~    |; path, note ! bell",
        "a path; parallel {~    path \"dry\" |; -12 dB, as ! path",
        "in a path; parallel {~    path \"dry\" {~      |; bell, apply, note ! path, source",
        "mid and side; mid-side {~    |; mid, side ! bell",
        "the other one; mid-side {~    mid {~    }~    |; side ! mid",
        "in the middle; mid-side {~    mid {~      |; bell ! side",
        "a split's slope; multiband |; 24 dB/oct, as ! Hz",
        "in a split; multiband {~    |; band ! bell",
        "the first band; multiband {~    band |; below ! above, 200 Hz",
        "its edge; multiband {~    band below |; 150 Hz ! kHz",
        "its edge's unit; multiband {~    band below 200 |; Hz ! ms",
        "the next band; multiband {~    band below 200 Hz~    band |; above 200 Hz, 200 Hz to ! below",
        "its upper end; multiband {~    band below 200 Hz~    band 200 Hz to |; 8 kHz ! to",
        "the last band; multiband {~    band below 200 Hz~    band above |; 200 Hz ! 4 kHz",
        "in a band; multiband {~    band below 200 Hz {~      |; gain, bell ! band",
        "a passage; during 0:31 |; to",
        "in a passage on one line; during 0:31 to 0:32 { |; bell, note ! source",
        "behind braces in quotes; note \"{ so }\"~  |; high-pass, bell ! side-chain",
      })
  void structure_everyPlace_isCompleted(String place, String marked, String expected) {
    check(place, "chain here {~  " + marked + OTHERS, expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "in a preset; |; source, bell, apply, note ! take, to, listen",
        "a preset's source; source |; lead-vocal",
        "a circle; apply |; clean ! here, back",
      })
  void preset_everyPlace_isCompleted(String place, String marked, String expected) {
    check(
        place,
        "preset here {~  " + marked + "~}~preset back {~  apply here~}~preset clean {~}~",
        expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "nothing above; |; polarity, high-pass, bell, de-ess, compressor, limiter, dither",
        "before a compressor; high-pass 60 Hz~  |~  compressor threshold -20 dBFS; bell, gate, de-ess, compressor, saturation, polarity",
        "after a compressor; compressor threshold -20 dBFS~  |; bell, high-shelf, saturation, limiter, compressor, gate, de-ess",
        "after a de-esser; de-ess band 5 to 9 kHz threshold -30 dBFS~  |; compressor, high-pass, bell, limiter, de-ess, gate",
        "after a limiter; limiter ceiling -1 dBFS~  |; dither, limiter, high-pass, bell",
        "two high-passes; high-pass 60 Hz~  |; bell, compressor, high-pass",
      })
  void stages_atAPlace_standInTheOrderThatMakesSense(String place, String marked, String expected) {
    check(place, "chain here {~  " + marked + "~}", expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "high-|pass 66 Hz; low-pass; low-pass 66 Hz",
        "high-pass 6|6 Hz 18 dB/oct; 6 Hz; high-pass 6 Hz 18 dB/oct",
        "high-pass 66 H|z 18 dB/oct; Hz; high-pass 66 Hz 18 dB/oct",
        "high-pass |18 dB/oct; 80 Hz; high-pass 80 Hz 18 dB/oct",
        "high-pass 66 | Hz; Hz; high-pass 66 Hz",
        "de-ess band 4|.5 to 9 kHz threshold -30 dBFS; 4 to 10 kHz; de-ess band 4 to 10 kHz threshold -30 dBFS",
        "compressor thr|eshold; threshold; compressor threshold",
        "compressor ratio 3:|; 3:1; compressor ratio 3:1",
      })
  void word_isReplacedToItsEnd(String marked, String taken, String expected) {
    Caret caret = Caret.in("chain here {\n  " + marked + "\n}");
    Proposal proposal =
        caret.answer().proposals().stream()
            .filter(one -> one.text().equals(taken))
            .findFirst()
            .orElseThrow(() -> new AssertionError(caret.texts().toString()));
    assertThat(caret.after(proposal)).isEqualTo("chain here {\n  " + expected + "\n}");
  }

  private static void check(String place, String marked, String expected) {
    List<String> texts = Caret.in(marked.replace('~', '\n')).texts();
    String[] sides = expected.split("!", -1);
    int at = -1;
    for (String offered : sides[0].isBlank() ? new String[0] : sides[0].strip().split(", ")) {
      assertThat(texts).as(place).contains(offered);
      assertThat(texts.indexOf(offered))
          .as("%s: place of %s in %s", place, offered, texts)
          .isGreaterThan(at);
      at = texts.indexOf(offered);
    }
    if (sides.length > 1) {
      assertThat(texts).as(place).doesNotContain(sides[1].strip().split(", "));
    }
  }
}
