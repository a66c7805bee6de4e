package chainwright.dsp.filter;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SumDesign;
import chainwright.dsp.signal.Wiring;
import java.util.List;

/**
 * A split into bands, each processed on its own and added again; with wires in all bands the sum
 * has a flat magnitude.
 *
 * <p>The split is made from the lowest crossover upward, and a band that is split no further passes
 * the all-pass sums of the crossovers above it, so that all bands stay in phase. NaN or an infinity
 * stays in the crossovers of its channel until they are reset.
 *
 * @param crossovers the crossovers, their frequencies rising
 * @param bands what processes each band, lowest first, one more than crossovers
 */
public record BandsDesign(List<Crossover> crossovers, List<ProcessorDesign> bands)
    implements ProcessorDesign {

  /**
   * Copies the lists.
   *
   * @param crossovers the crossovers
   * @param bands what processes each band
   * @throws IllegalArgumentException if there is not one band more than crossovers
   */
  public BandsDesign {
    if (bands.size() != crossovers.size() + 1) {
      throw new IllegalArgumentException(
          "there must be one band more than crossovers, but there were "
              + bands.size()
              + " bands and "
              + crossovers.size()
              + " crossovers");
    }
    crossovers = List.copyOf(crossovers);
    bands = List.copyOf(bands);
  }

  @Override
  public int latencyFrames() {
    return sum().latencyFrames();
  }

  @Override
  public int tailFrames() {
    return sum().tailFrames();
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return sum().newProcessor(wiring);
  }

  /**
   * Returns the filters through which a band gets its share of the signal.
   *
   * @param index the band's index, from 0
   * @return the filters as one
   */
  public FilterCascade filter(int index) {
    FilterCascade whole = null;
    for (int i = 0; i < crossovers.size(); i++) {
      Crossover crossover = crossovers.get(i);
      FilterCascade part =
          i < index ? crossover.high() : i == index ? crossover.low() : crossover.sum();
      whole = whole == null ? part : whole.then(part);
    }
    if (whole == null) {
      throw new IllegalArgumentException("one band alone has no filter");
    }
    return whole;
  }

  private ProcessorDesign sum() {
    return from(0);
  }

  /** Processes what the crossovers below this one leave: its low part, and what is above it. */
  private ProcessorDesign from(int index) {
    if (index == crossovers.size()) {
      return bands.get(index);
    }
    FilterCascade low = crossovers.get(index).low();
    for (Crossover above : crossovers.subList(index + 1, crossovers.size())) {
      low = low.then(above.sum());
    }
    return new SumDesign(
        List.of(
            FilterDesign.inSeries(List.of(new FilterDesign(low), bands.get(index))),
            FilterDesign.inSeries(
                List.of(new FilterDesign(crossovers.get(index).high()), from(index + 1)))));
  }
}
