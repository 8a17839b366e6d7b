package withers.report.watch;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;

/** Whether the schedule still wakes up. Safe for several threads. */
public final class Pulse {

  /** It wakes each quarter of an hour at least; two may be lost to a machine that sleeps. */
  static final Duration LONGEST = Duration.ofMinutes(45);

  private final Clock clock;
  private volatile Instant last;
  private volatile boolean isAtWork;

  /** It beats now. */
  public Pulse(Clock clock) {
    this.clock = clock;
    this.last = clock.instant();
  }

  /** Work takes as long as it takes: meanwhile no beat is missed. */
  public void begins() {
    isAtWork = true;
  }

  /** The schedule is awake, and not at work any more. */
  public void beats() {
    last = clock.instant();
    isAtWork = false;
  }

  boolean isAlive() {
    return isAtWork || Duration.between(last, clock.instant()).compareTo(LONGEST) < 0;
  }
}
