package chainwright.engine.stage;

import chainwright.dsp.reverb.ReverbDesign;

/**
 * The decay of a room.
 *
 * @param room the room, which sounds
 * @param blendShare the factor of its sound, 0 to 1
 */
public record RoomDecay(ReverbDesign room, double blendShare) implements DecayModel {

  @Override
  public double secondsAt(double hertz) {
    return room.times().secondsAt(hertz);
  }
}
