package withers.report.privacy;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.contact.Contact;
import withers.contact.ContactVault;
import withers.matching.Level;
import withers.matching.Matcher;
import withers.matching.Trait;
import withers.matching.Weighing;
import withers.matching.form.NormalForm;
import withers.matching.form.NormalForms;

/**
 * Finds who may be somebody: whom the matcher takes for the same person, and whoever has the same
 * phone, mailbox or name. Too many rather than too few: a person chooses among them.
 */
public record Matches(NormalForms forms, Matcher matcher) {

  /** All of them in a vault, the likeliest first. */
  public List<Match> find(Contact wanted, ContactVault vault) {
    NormalForm form = forms.of(wanted);
    List<Weighed> found = new ArrayList<>();
    vault.visit(
        (reference, contact) -> {
          Weighing weighing = matcher.weigh(form, forms.of(contact));
          boolean isSame = weighing.verdict().isSamePerson();
          why(weighing)
              .map(why -> new Match(reference, contact, isSame, why))
              .ifPresent(match -> found.add(new Weighed(match, weighing)));
        });
    return found.stream().sorted(LIKELIEST).map(Weighed::match).toList();
  }

  private record Weighed(Match match, Weighing weighing) {}

  private static final Comparator<Weighed> LIKELIEST =
      Comparator.comparing((Weighed one) -> one.weighing.verdict())
          .thenComparing(one -> -one.weighing.score())
          .thenComparing(one -> one.match.reference());

  private static Optional<String> why(Weighing weighing) {
    if (weighing.verdict().isSamePerson()) {
      return Optional.of("the same person");
    }
    return Stream.of(
            said(isSame(weighing, Trait.PHONE), "the same phone"),
            said(isSame(weighing, Trait.EMAIL), "the same e-mail"),
            said(
                agrees(weighing, Trait.GIVEN_NAME) && agrees(weighing, Trait.FAMILY_NAME),
                "the same name"))
        .flatMap(Optional::stream)
        .findFirst();
  }

  private static Optional<String> said(boolean is, String words) {
    return is ? Optional.of(words) : Optional.empty();
  }

  /** A digit or letter apart is another line, or a neighbour's. */
  private static boolean isSame(Weighing weighing, Trait trait) {
    return agrees(weighing, trait) && weighing.level(trait) != Level.CLOSE;
  }

  private static boolean agrees(Weighing weighing, Trait trait) {
    return weighing.level(trait).isAgreement();
  }
}
