package withers.ingest.change;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import withers.chip.ChipNumber;
import withers.fact.Subject;
import withers.id.RecordKey;

/** Timelines of invented records, as bytes and back. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class TimelineFormTest {

  private static final RecordKey KEY = new RecordKey("K\u00f6nig 7");
  private static final List<String> TEXTS =
      List.of("", "A1", "99900000000l001", "\u6f22\ud83d\udc08");

  private final PackedTimelines packed = new PackedTimelines();

  static LongStream seeds() {
    return LongStream.range(0, 300);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_timeline_comes_back_as_it_was(long seed) {
    Timeline timeline = timeline(new Random(seed));
    Timeline read = TimelineForm.read(TimelineForm.write(timeline));
    assertThat(inWords(read)).as("seed %d", seed).isEqualTo(inWords(timeline));
    assertThat(read.isChanged()).isFalse();
    packed.keep(KEY, timeline);
    assertThat(inWords(packed.find(KEY).orElseThrow()))
        .as("seed %d", seed)
        .isEqualTo(inWords(timeline));
  }

  @Test
  void what_the_import_has_seen_and_added_is_kept_with_it() {
    Timeline timeline = timeline(new Random(1));
    timeline.markAsRemembered();
    packed.keep(KEY, timeline);
    assertThat(packed.find(KEY)).hasValueSatisfying(one -> assertThat(one.isChanged()).isFalse());
    assertThat(packed.find(KEY)).hasValueSatisfying(one -> assertThat(one.isSeen()).isFalse());
    timeline.markSeen();
    packed.keep(KEY, timeline);
    assertThat(packed.find(KEY)).hasValueSatisfying(one -> assertThat(one.isSeen()).isTrue());
    timeline.add(30_000, Version.ABSENT);
    packed.keep(KEY, timeline);
    assertThat(packed.find(KEY)).hasValueSatisfying(one -> assertThat(one.isChanged()).isTrue());
  }

  @Test
  void shows_each_timeline_under_its_key() {
    packed.keep(KEY, timeline(new Random(1)));
    packed.keep(new RecordKey("R2"), timeline(new Random(2)));
    List<String> shown = new ArrayList<>();
    packed.forEach((key, timeline) -> shown.add(key + " " + inWords(timeline)));
    assertThat(shown)
        .containsExactly(
            KEY + " " + inWords(timeline(new Random(1))), "R2 " + inWords(timeline(new Random(2))));
  }

  /** Versions are equal when their digests are; here all that they hold has to be. */
  private static List<String> inWords(Timeline timeline) {
    return timeline.told().stream().map(Record::toString).toList();
  }

  private static Timeline timeline(Random random) {
    Timeline timeline = new Timeline();
    for (int points = random.nextInt(4); points > 0; points--) {
      timeline.add(random.nextInt(60_000) - 10_000, version(random));
    }
    return timeline;
  }

  private static Version version(Random random) {
    if (random.nextInt(5) == 0) {
      return Version.ABSENT;
    }
    int slots = 1 + random.nextInt(1 << 16);
    List<Place> places =
        IntStream.rangeClosed(0, random.nextInt(3))
            .mapToObj(i -> new Place(subject(random), slots))
            .toList();
    List<String> links = random.nextBoolean() ? List.of() : List.of(text(random));
    int day = random.nextBoolean() ? Version.NO_DAY : random.nextInt(60_000) - 30_000;
    return new Version(random.nextLong(), random.nextLong(), places, links, day);
  }

  private static Subject subject(Random random) {
    return switch (random.nextInt(5)) {
      case 0 -> new Subject.Damaged(text(random), List.of(number(random), number(random)));
      case 1 -> new Subject.Animal(text(random));
      case 2 -> new Subject.Range();
      case 3 -> Version.UNREADABLE;
      default -> new Subject.Chip(number(random));
    };
  }

  private static ChipNumber number(Random random) {
    return random.nextInt(5) == 0
        ? ChipNumber.tenCharacter("99900012A" + random.nextInt(10))
        : ChipNumber.iso(999, random.nextLong() & ChipNumber.LARGEST_NATIONAL_CODE);
  }

  private static String text(Random random) {
    return TEXTS.get(random.nextInt(TEXTS.size()));
  }
}
