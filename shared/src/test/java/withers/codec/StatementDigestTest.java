package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.fact.Origin;
import withers.fact.RandomEvents;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.id.RecordKey;
import withers.id.SourceId;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class StatementDigestTest {

  /** Any other value here means that every record of every source would look changed once. */
  @Test
  void digests_are_as_they_were_frozen() {
    String digests =
        Samples.all().stream()
            .map(event -> StatementDigest.of(event).toString())
            .collect(Collectors.joining("\n"));
    assertThat(digests).isEqualTo(Approved.text("digests.txt"));
  }

  @Test
  void content_alone_decides() {
    Map<List<Object>, StatementDigest> byContent = new HashMap<>();
    Set<StatementDigest> digests = new HashSet<>();
    for (ChipEvent event : new RandomEvents(11).events(20_000)) {
      StatementDigest digest = StatementDigest.of(event);
      StatementDigest before = byContent.putIfAbsent(content(event), digest);
      assertThat(before == null || before.equals(digest)).isTrue();
      digests.add(digest);
    }
    assertThat(digests).hasSize(byContent.size());
    assertThat(byContent.size()).isBetween(10_000, 19_999);
  }

  @Test
  void origin_but_the_slot_takes_no_part() {
    ChipEvent event = Samples.FACTS.get(0);
    Origin elsewhere =
        new Origin(
            new SourceId("tidewater"),
            new RecordKey("other"),
            event.origin().slot(),
            LocalDate.of(2030, 1, 1),
            new Locator(3, 99));
    assertThat(StatementDigest.of(with(event, elsewhere))).isEqualTo(StatementDigest.of(event));
  }

  @Test
  void the_slot_takes_part() {
    ChipEvent event = Samples.FACTS.get(0);
    Origin o = event.origin();
    Origin other = new Origin(o.source(), o.key(), Slot.SCAN, o.exportDate(), o.locator());
    assertThat(StatementDigest.of(with(event, other))).isNotEqualTo(StatementDigest.of(event));
  }

  @Test
  void order_is_that_of_the_text() {
    List<StatementDigest> digests =
        new RandomEvents(5).events(500).stream().map(StatementDigest::of).toList();
    assertThat(digests.stream().sorted().map(StatementDigest::toString))
        .containsExactlyElementsOf(
            digests.stream().map(StatementDigest::toString).sorted().toList());
  }

  @Test
  void a_field_added_later_changes_nothing_while_it_is_empty() {
    Fact.Linked linked = new Fact.Linked("A-17");
    Shape.Builder<Fact.Linked> builder =
        Shape.of(17, "linked", Fact.Linked.class)
            .field("animalId", WireType.TEXT, Fact.Linked::animalId);
    Family<Fact> now = family(builder.makes(v -> linked));
    Family<Fact> later =
        family(
            builder
                .field("more", WireType.TEXT.optional(), f -> Optional.<String>empty())
                .makes(v -> linked));
    assertThat(input(later, linked)).isEqualTo(input(now, linked));
  }

  private static Family<Fact> family(Shape<Fact.Linked> linked) {
    return Family.of("fact", Fact.class, linked);
  }

  private static byte[] input(Family<Fact> family, Fact fact) {
    Bytes bytes = new Bytes();
    new DigestOutput(bytes).shape(family, fact);
    return bytes.toArray();
  }

  private static List<Object> content(ChipEvent event) {
    Subject subject = event.subject();
    return List.of(subject, event.origin().slot(), event.date(), event.fact());
  }

  private static ChipEvent with(ChipEvent event, Origin origin) {
    return new ChipEvent(event.subject(), origin, event.date(), event.fact());
  }
}
