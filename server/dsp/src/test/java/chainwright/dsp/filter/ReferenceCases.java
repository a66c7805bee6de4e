package chainwright.dsp.filter;

import chainwright.dsp.reference.ReferenceTable;
import chainwright.quantity.Bandwidth;
import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import chainwright.quantity.SampleRate;
import java.util.List;

/** The prototypes of the reference cases, by the first three letters of their files' names. */
final class ReferenceCases {

  private static final double FLATTEST = Math.sqrt(0.5);

  private ReferenceCases() {}

  static List<ReferenceTable.Row> table(String name) {
    return ReferenceTable.read(ReferenceCases.class, name);
  }

  static double[] column(List<ReferenceTable.Row> table, String name) {
    return table.stream().mapToDouble(row -> row.number(name)).toArray();
  }

  static SampleRate rate(String file) {
    return SampleRate.ofHertz(Double.parseDouble(file.substring(file.lastIndexOf('_') + 1)));
  }

  static Frequency corner(String file) {
    String withoutRate = file.substring(0, file.lastIndexOf('_'));
    return Frequency.ofHertz(
        Double.parseDouble(withoutRate.substring(withoutRate.lastIndexOf('_') + 1)));
  }

  static AnaloguePrototype prototype(String file) {
    Frequency f = corner(file);
    return switch (file.substring(0, 3)) {
      case "p01" -> PassPrototypes.highPass(PassFamily.BUTTERWORTH, 1, f);
      case "p02" -> PassPrototypes.highPass(PassFamily.BUTTERWORTH, 2, f);
      case "p03" -> PassPrototypes.highPass(PassFamily.BUTTERWORTH, 3, f);
      case "p04" -> PassPrototypes.highPass(PassFamily.BUTTERWORTH, 4, f);
      case "p05" -> PassPrototypes.highPass(PassFamily.BUTTERWORTH, 8, f);
      case "p06" -> PassPrototypes.lowPass(PassFamily.BUTTERWORTH, 1, f);
      case "p07" -> PassPrototypes.lowPass(PassFamily.BUTTERWORTH, 2, f);
      case "p08" -> PassPrototypes.lowPass(PassFamily.BUTTERWORTH, 4, f);
      case "p09" -> PassPrototypes.lowPass(PassFamily.BUTTERWORTH, 6, f);
      case "p10" -> PassPrototypes.lowPass(PassFamily.LINKWITZ_RILEY, 2, f);
      case "p11" -> PassPrototypes.lowPass(PassFamily.LINKWITZ_RILEY, 4, f);
      case "p12" -> PassPrototypes.highPass(PassFamily.LINKWITZ_RILEY, 4, f);
      case "p13" -> PassPrototypes.highPass(PassFamily.LINKWITZ_RILEY, 8, f);
      case "p14" -> PassPrototypes.lowPass(PassFamily.BESSEL_MAGNITUDE, 2, f);
      case "p15" -> PassPrototypes.lowPass(PassFamily.BESSEL_PHASE, 4, f);
      case "p16" -> PassPrototypes.highPass(PassFamily.BESSEL_MAGNITUDE, 4, f);
      case "p17" -> bell(f, 6, 1);
      case "p18" -> bell(f, -3.5, 1.4);
      case "p19" ->
          EqualiserPrototypes.bell(
              f,
              new Decibels(4),
              EqualiserPrototypes.bilinearQuality(new Bandwidth(1), f, rate(file)));
      case "p20" -> bell(f, 6, 0.7);
      case "p21" -> bell(f, 9, 4);
      case "p22" -> lowShelf(f, 3, EqualiserPrototypes.shelfQuality(1, new Decibels(3)));
      case "p23" -> lowShelf(f, -6, new QualityFactor(FLATTEST));
      case "p24" -> highShelf(f, 3, EqualiserPrototypes.shelfQuality(1, new Decibels(3)));
      case "p25" -> highShelf(f, -4, EqualiserPrototypes.shelfQuality(0.5, new Decibels(-4)));
      case "p26" -> EqualiserPrototypes.notch(f, new QualityFactor(30));
      case "p27" -> EqualiserPrototypes.notch(f, new QualityFactor(5));
      case "p28" -> EqualiserPrototypes.allPass(f, new QualityFactor(FLATTEST));
      case "p29" -> EqualiserPrototypes.bandPass(f, new QualityFactor(1.5));
      case "p30" -> EqualiserPrototypes.lowPass(f, new QualityFactor(2));
      case "p31" -> EqualiserPrototypes.tilt(f, new Decibels(6));
      case "p32" -> EqualiserPrototypes.tilt(f, new Decibels(-4));
      default -> throw new IllegalArgumentException("there is no reference case " + file);
    };
  }

  private static AnaloguePrototype bell(Frequency centre, double gainDb, double q) {
    return EqualiserPrototypes.bell(centre, new Decibels(gainDb), new QualityFactor(q));
  }

  private static AnaloguePrototype lowShelf(Frequency midpoint, double gainDb, QualityFactor q) {
    return EqualiserPrototypes.lowShelf(midpoint, new Decibels(gainDb), q);
  }

  private static AnaloguePrototype highShelf(Frequency midpoint, double gainDb, QualityFactor q) {
    return EqualiserPrototypes.highShelf(midpoint, new Decibels(gainDb), q);
  }
}
