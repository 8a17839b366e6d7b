package withers.ingest.change;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import withers.fact.Subject;

/**
 * What a source told about one record, by export date: the points that the log holds. Between two
 * points the record stayed as it was.
 */
final class Timeline {

  private static final Told[] NOTHING = {};

  private Told[] told = NOTHING;
  private boolean seen;
  private boolean changed;

  /** Notes a point; points of one day keep the order in which they came. */
  void add(int day, Version version) {
    int at = told.length;
    while (at > 0 && told[at - 1].day() > day) {
      at--;
    }
    Told[] more = Arrays.copyOf(told, told.length + 1);
    System.arraycopy(told, at, more, at + 1, told.length - at);
    more[at] = new Told(day, version);
    told = more;
    changed = true;
  }

  /** Whether this very version is told at this very day. */
  boolean has(int day, Version version) {
    return Arrays.stream(told).anyMatch(t -> t.day() == day && t.version().says(version));
  }

  /** Whether the log says something of this day by itself, presence or absence. */
  boolean speaksAt(int day) {
    for (Told one : told) {
      if (one.day() == day) {
        return true;
      }
    }
    return false;
  }

  /** The versions told at a day; without absence, which gives way to presence. */
  List<Version> at(int day) {
    List<Version> versions = new ArrayList<>(1);
    for (Told one : told) {
      if (one.day() == day && !one.version().isAbsent()) {
        versions.add(one.version());
      }
    }
    return versions;
  }

  /**
   * How the record stood strictly before a day: empty when it was not listed, one version, or
   * several when its last day told several.
   */
  List<Version> before(int day) {
    for (int i = told.length - 1; i >= 0; i--) {
      if (told[i].day() < day) {
        return isAlone(i) ? alone(told[i].version()) : at(told[i].day());
      }
    }
    return List.of();
  }

  private boolean isAlone(int i) {
    return i == 0 || told[i - 1].day() != told[i].day();
  }

  private static List<Version> alone(Version version) {
    return version.isAbsent() ? List.of() : List.of(version);
  }

  /** The days after this one at which the log says something by itself, in order. */
  List<Integer> daysAfter(int day) {
    if (told.length == 0 || lastDay() <= day) {
      return List.of(); // nearly always, and imports ask for each row
    }
    return Arrays.stream(told).map(Told::day).filter(d -> d > day).distinct().toList();
  }

  /** Whether the log says nothing by itself after the first day, up to and with the second. */
  boolean isSilentFromUntil(int after, int until) {
    return Arrays.stream(told).noneMatch(t -> t.day() > after && t.day() <= until);
  }

  /** All that was filled at any earlier day, by subject. */
  Map<Subject, Integer> formersBefore(int day) {
    Map<Subject, Integer> formers = new LinkedHashMap<>();
    for (Told one : told) {
      if (one.day() < day) {
        one.version().places().forEach(p -> formers.merge(p.subject(), p.slots(), (a, b) -> a | b));
      }
    }
    return formers;
  }

  /** All that the record ever spoke of. */
  Set<Subject> subjects() {
    Set<Subject> subjects = new LinkedHashSet<>();
    for (Told one : told) {
      one.version().places().forEach(place -> subjects.add(place.subject()));
    }
    return subjects;
  }

  /** The record's own days, as stated before this export date. */
  List<Integer> ownDaysBefore(int day) {
    List<Integer> days = new ArrayList<>();
    for (Told one : told) {
      if (one.day() < day && one.version().day() != Version.NO_DAY) {
        days.add(one.version().day());
      }
    }
    return days;
  }

  /** All points, in the order of their days. */
  List<Told> told() {
    return List.of(told);
  }

  /** Whether the record is listed by the source's last word on it. */
  boolean isListed() {
    return told.length > 0 && isListedAt(lastDay());
  }

  /** Whether the record is listed by what is told of it up to a day, and on it. */
  boolean isListedAt(int day) {
    return listedAt(new int[] {day})[0];
  }

  /** The same for each of some days, which ascend. */
  boolean[] listedAt(int[] days) {
    boolean[] listed = new boolean[days.length];
    boolean isListed = false;
    int next = 0;
    for (int i = 0; i < days.length; i++) {
      for (; next < told.length && told[next].day() <= days[i]; next++) {
        isListed = !told[next].version().isAbsent() || isListed && !isAlone(next);
      }
      listed[i] = isListed;
    }
    return listed;
  }

  /** The days of all points, in order. */
  int[] days() {
    int[] days = new int[told.length];
    for (int i = 0; i < days.length; i++) {
      days[i] = told[i].day();
    }
    return days;
  }

  /** Whether the source's last word on the record is one version, and one that could be read. */
  boolean isPlain() {
    List<Version> last = told.length == 0 ? List.of() : at(lastDay());
    return last.size() == 1 && !last.get(0).isUnreadable();
  }

  private int lastDay() {
    return told[told.length - 1].day();
  }

  /** What it holds now is no change. */
  void markAsRemembered() {
    changed = false;
  }

  /** Whether points were added since it was remembered. */
  boolean isChanged() {
    return changed;
  }

  boolean isEmpty() {
    return told.length == 0;
  }

  /** Whether the import at hand has come across the record. */
  boolean isSeen() {
    return seen;
  }

  void markSeen() {
    seen = true;
  }
}
