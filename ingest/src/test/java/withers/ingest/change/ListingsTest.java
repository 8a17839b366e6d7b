package withers.ingest.change;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.fact.Subject;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ListingsTest {

  private static final int DAYS = 30;

  @Test
  void counts_are_those_of_each_record_at_each_full_export() throws IOException {
    for (long seed = 0; seed < 500; seed++) {
      Random random = new Random(seed);
      NavigableSet<Integer> days = days(random);
      List<Timeline> timelines = timelines(random, DAYS);
      Listings listings = Listings.none().at(days);
      timelines.forEach(listings::add);
      assertThat(listings.gaps()).as("seed %d", seed).isEqualTo(counted(timelines, days));
      assertThat(again(listings).gaps()).as("seed %d", seed).isEqualTo(listings.gaps());
    }
  }

  @Test
  void records_are_taken_out_and_put_back_as_they_are_by_a_later_export() {
    for (long seed = 0; seed < 500; seed++) {
      Random random = new Random(seed);
      NavigableSet<Integer> days = days(random);
      List<Timeline> timelines = timelines(random, days.last() + 1);
      Listings before = Listings.none().at(days);
      timelines.forEach(before::add);

      List<Timeline> changed = timelines.subList(0, timelines.size() / 2);
      changed.forEach(before::remove);
      days.add(DAYS);
      Listings after = before.at(days);
      changed.forEach(one -> one.add(DAYS, version(random)));
      changed.forEach(after::add);
      assertThat(after.gaps()).as("seed %d", seed).isEqualTo(counted(timelines, days));
    }
  }

  private static NavigableSet<Integer> days(Random random) {
    NavigableSet<Integer> days = new TreeSet<>();
    for (int i = random.nextInt(9); i >= 0; i--) {
      days.add(random.nextInt(DAYS));
    }
    return days;
  }

  /**
   * Records of which something is told on days before this one, those of full exports or others.
   */
  private static List<Timeline> timelines(Random random, int before) {
    List<Timeline> timelines = new ArrayList<>();
    for (int i = random.nextInt(7); i >= 0; i--) {
      Timeline timeline = new Timeline();
      for (int points = random.nextInt(6); points >= 0; points--) {
        timeline.add(random.nextInt(before), version(random));
      }
      timelines.add(timeline);
    }
    return timelines;
  }

  private static Version version(Random random) {
    return random.nextInt(3) == 0
        ? Version.ABSENT
        : new Version(
            1, random.nextInt(5), List.of(new Place(new Subject.Animal("A"), 1)), List.of(), 0);
  }

  /** Counted record by record and day by day. */
  private static List<Disappearances.Gap> counted(
      List<Timeline> timelines, NavigableSet<Integer> days) {
    List<Disappearances.Gap> gaps = new ArrayList<>();
    for (int day : days.tailSet(days.first(), false)) {
      int last = days.lower(day);
      long listed = timelines.stream().filter(one -> one.isListedAt(last)).count();
      long missing =
          timelines.stream().filter(one -> one.isListedAt(last) && !one.isListedAt(day)).count();
      gaps.add(Disappearances.Gap.of(day, listed, missing));
    }
    return gaps;
  }

  private static Listings again(Listings listings) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    listings.write(new DataOutputStream(bytes));
    return Listings.read(new DataInputStream(new ByteArrayInputStream(bytes.toByteArray())));
  }
}
