package withers.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.contact.Contact;
import withers.corpus.Corpus;
import withers.corpus.Mix;
import withers.corpus.Pair;
import withers.matching.form.Email;
import withers.matching.form.NormalForm;
import withers.matching.form.NormalForms;

/** What holds for any two contacts, on pairs of the corpus. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class MatcherTest {
  private static final int PAIRS = 1_500;
  private static final Matcher MATCHER = Matcher.builtIn();
  private static final Map<String, NormalForms> FORMS = new HashMap<>();

  private record Two(int number, NormalForm one, NormalForm other) {
    String name() {
      return "pair " + number + " of TUNING";
    }

    Two map(UnaryOperator<NormalForm> change) {
      return new Two(number, change.apply(one), change.apply(other));
    }

    Weighing weighing() {
      return MATCHER.weigh(one, other);
    }
  }

  private static Stream<Two> pairs() {
    Corpus corpus = new Corpus(Mix.TUNING);
    return Stream.iterate(0, i -> i < PAIRS, i -> i + 1).map(i -> two(i, corpus.pair(i)));
  }

  private static Two two(int number, Pair pair) {
    NormalForms forms = FORMS.computeIfAbsent(pair.country(), NormalForms::new);
    return new Two(number, forms.of(pair.one()), forms.of(pair.other()));
  }

  @Test
  void which_contact_comes_first_changes_nothing_to_the_last_bit() {
    pairs()
        .forEach(
            two ->
                assertThat(MATCHER.weigh(two.other, two.one))
                    .as(two.name())
                    .isEqualTo(two.weighing()));
  }

  @Test
  void the_quick_verdict_is_that_of_the_weighing() {
    pairs()
        .forEach(
            two ->
                assertThat(MATCHER.verdict(two.one, two.other))
                    .as(two.name())
                    .isEqualTo(two.weighing().verdict()));
  }

  @Test
  void a_contact_is_the_same_as_itself_or_says_too_little() {
    pairs()
        .forEach(
            two ->
                assertThat(MATCHER.verdict(two.one, two.one))
                    .as(two.name())
                    .isIn(Verdict.SAME, Verdict.CANNOT_TELL));
  }

  @Test
  void a_further_agreeing_trait_never_makes_one_person_less_likely() {
    NormalForm whole = FORMS.computeIfAbsent("GB", NormalForms::new).of(WHOLE);

    pairs()
        .forEach(
            two -> {
              agreesMore(two, two.map(MatcherTest::withoutPhones), two.map(f -> phones(f, whole)));
              agreesMore(two, two.map(MatcherTest::withoutEmails), two.map(f -> emails(f, whole)));
              agreesMore(two, two.map(MatcherTest::nowhere), two.map(f -> address(f, whole)));
              agreesMore(two, two.map(MatcherTest::nameless), two.map(f -> names(f, whole)));
            });
  }

  private static void agreesMore(Two pair, Two without, Two with) {
    Weighing less = without.weighing();
    Weighing more = with.weighing();
    assertThat(more.score()).as(pair.name()).isGreaterThan(less.score());
    assertThat(more.samePerson()).as(pair.name()).isGreaterThanOrEqualTo(less.samePerson());
  }

  @Test
  void what_only_one_of_them_states_is_neutral() {
    NormalForm whole = FORMS.computeIfAbsent("GB", NormalForms::new).of(WHOLE);

    pairs()
        .forEach(
            two -> {
              neutral(two, MatcherTest::withoutPhones, f -> phones(f, whole));
              neutral(two, MatcherTest::withoutEmails, f -> emails(f, whole));
              neutral(two, MatcherTest::nowhere, f -> address(f, whole));
            });
  }

  private static void neutral(
      Two pair, UnaryOperator<NormalForm> take, UnaryOperator<NormalForm> give) {
    Two without = pair.map(take);
    Two oneSided = new Two(pair.number, give.apply(without.one), without.other);
    assertThat(oneSided.weighing()).as(pair.name()).isEqualTo(without.weighing());
  }

  @Test
  void probabilities_are_such_and_follow_from_the_weights() {
    pairs()
        .forEach(
            two -> {
              Weighing weighing = two.weighing();
              double odds = Math.pow(2, weighing.score());
              double household = Math.pow(2, weighing.householdScore());
              assertThat(weighing.samePerson())
                  .as(two.name())
                  .isCloseTo(odds / (odds + household + 1), within(1e-9));
              assertThat(weighing.samePerson() + weighing.sameHousehold())
                  .isBetween(0.0, 1 + 1e-12);
            });
  }

  @Test
  void no_household_s_evidence_makes_one_person_of_two_given_names() {
    pairs()
        .map(MatcherTest::together)
        .filter(two -> two.weighing().level(Trait.GIVEN_NAME) == Level.DIFFERENT)
        .forEach(
            two -> assertThat(two.weighing().verdict().isSamePerson()).as(two.name()).isFalse());
  }

  /** The second one gets the first one's numbers, mailboxes and house. */
  private static Two together(Two two) {
    NormalForm other = address(emails(phones(two.other, two.one), two.one), two.one);
    return new Two(two.number, two.one, other);
  }

  @Test
  void a_weighing_shows_no_details() {
    pairs()
        .filter(two -> two.one.name().length() > 6 && !two.one.emails().isEmpty())
        .forEach(
            two ->
                assertThat(two.weighing().toString())
                    .as(two.name())
                    .doesNotContain(two.one.name(), "@")
                    .doesNotContain(two.one.emails().stream().map(Email::mailbox).toList()));
  }

  private static final Contact WHOLE =
      new Contact(
          "",
          "Ottoline",
          "Quillfeather",
          List.of("07700 900999"),
          List.of("ottoline.quillfeather@example.org"),
          List.of("99 Quill Lane"),
          "ZQ9 9QQ",
          "Featherham",
          "",
          "");

  private static NormalForm withoutPhones(NormalForm f) {
    return new NormalForm(
        f.names(), f.organisation(), f.name(), List.of(), f.emails(), f.address());
  }

  private static NormalForm phones(NormalForm f, NormalForm from) {
    return new NormalForm(
        f.names(), f.organisation(), f.name(), from.phones(), f.emails(), f.address());
  }

  private static NormalForm withoutEmails(NormalForm f) {
    return new NormalForm(
        f.names(), f.organisation(), f.name(), f.phones(), List.of(), f.address());
  }

  private static NormalForm emails(NormalForm f, NormalForm from) {
    return new NormalForm(
        f.names(), f.organisation(), f.name(), f.phones(), from.emails(), f.address());
  }

  private static NormalForm nowhere(NormalForm f) {
    return new NormalForm(
        f.names(), f.organisation(), f.name(), f.phones(), f.emails(), Optional.empty());
  }

  private static NormalForm address(NormalForm f, NormalForm from) {
    return new NormalForm(
        f.names(), f.organisation(), f.name(), f.phones(), f.emails(), from.address());
  }

  private static NormalForm nameless(NormalForm f) {
    return new NormalForm(List.of(), "", "", f.phones(), f.emails(), f.address());
  }

  private static NormalForm names(NormalForm f, NormalForm from) {
    return new NormalForm(from.names(), "", from.name(), f.phones(), f.emails(), f.address());
  }
}
