package withers.history;

import withers.workspace.Settings;

/**
 * Lengths of time that a workspace sets, in days.
 *
 * @param graceDays days that a new keeper has to register, from 0
 * @param handoverWindowDays days that two statements of one handover may lie apart, from 0
 */
public record Periods(int graceDays, int handoverWindowDays) {

  /** Those that {@code withers.yaml} states. */
  public static Periods of(Settings settings) {
    return new Periods(settings.graceDays(), settings.handoverWindowDays());
  }
}
