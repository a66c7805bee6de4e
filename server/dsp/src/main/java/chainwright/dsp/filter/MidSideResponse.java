package chainwright.dsp.filter;

import java.util.List;

/**
 * What a stereo stage does to the middle and to the sides, each on its own.
 *
 * <p>Mid is {@code (left + right) / 2} and side {@code (left - right) / 2}. A stage that treats
 * both channels alike has one response for both.
 *
 * @param mid the response of what is alike in both channels
 * @param side the response of what differs
 */
public record MidSideResponse(Response mid, Response side) {

  /**
   * Makes the response of a stage that treats both channels alike.
   *
   * @param both the response of either channel
   * @return the pair
   */
  public static MidSideResponse ofBoth(Response both) {
    return new MidSideResponse(both, both);
  }

  /**
   * Returns this stage followed by another.
   *
   * @param next what follows
   * @return both as one
   */
  public MidSideResponse then(MidSideResponse next) {
    return new MidSideResponse(
        new ResponseProduct(List.of(mid, next.mid)), new ResponseProduct(List.of(side, next.side)));
  }

  /**
   * Returns what reaches a channel of a signal in that channel alone: {@code (mid + side) / 2}.
   *
   * @return the response from left to left, or right to right
   */
  public Response toSameChannel() {
    return half(new SumOfPaths(List.of(mid, side)));
  }

  /**
   * Returns what reaches the other channel of a signal in one alone: {@code (mid - side) / 2}.
   *
   * @return the response from left to right, or right to left; 0 where both are treated alike
   */
  public Response toOtherChannel() {
    return half(
        new SumOfPaths(List.of(mid, new ResponseProduct(List.of(side, new ConstantFactor(-1))))));
  }

  private static Response half(Response sum) {
    return new ResponseProduct(List.of(sum, new ConstantFactor(0.5)));
  }
}
