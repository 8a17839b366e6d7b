package withers.demo;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Random;

/**
 * Random choices that depend on a seed, a topic and a number only, so that each animal and each
 * person can be made on its own and in any order. Built on {@link Random}, whose algorithm its
 * documentation lays down, so that every Java gives the same world.
 */
final class Dice {

  private final Random random;

  private Dice(long seed) {
    this.random = new Random(seed);
  }

  static Dice of(long seed, String topic, long number) {
    return new Dice(mix(mix(seed) + mix(topic.hashCode()) + mix(number)));
  }

  /** Spreads nearby numbers far apart, since nearby seeds give alike first numbers. */
  private static long mix(long value) {
    long mixed = (value ^ (value >>> 31)) * 0x9E3779B97F4A7C15L;
    mixed = (mixed ^ (mixed >>> 29)) * 0xD1B54A32D192ED03L;
    return mixed ^ (mixed >>> 32);
  }

  /** A number from 0 to the bound, the bound left out. */
  int below(int bound) {
    return random.nextInt(bound);
  }

  /** Whether something happens that happens to so many in a thousand. */
  boolean permille(int share) {
    return below(1000) < share;
  }

  /** Whether something happens that happens to that share, from 0 to 1. */
  boolean share(double share) {
    return fraction() < share;
  }

  /** A number from 0 to 1, 1 left out. */
  double fraction() {
    return random.nextDouble();
  }

  <T> T pick(List<T> choices) {
    return choices.get(below(choices.size()));
  }

  /** A day from the first to the last, both included; the first if they are in the wrong order. */
  LocalDate day(LocalDate first, LocalDate last) {
    long days = Math.max(0, ChronoUnit.DAYS.between(first, last));
    return first.plusDays(below((int) days + 1));
  }

  /** A day so many days later, from the least to the most. */
  LocalDate after(LocalDate day, int least, int most) {
    return day.plusDays(least + below(most - least + 1));
  }
}
