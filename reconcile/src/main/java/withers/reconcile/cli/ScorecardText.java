package withers.reconcile.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.finding.NotJudged;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.scorecard.Patient;
import withers.scorecard.Reach;
import withers.scorecard.Scorecard;
import withers.scorecard.Share;
import withers.scorecard.Target;
import withers.scorecard.Told;

/** A scorecard for people to read, as lines of text. */
record ScorecardText(Scorecard card, Target target, Directory directory) {
  private static final int NAMES_SHOWN = 3;

  List<String> lines() {
    return Stream.of(
            head(),
            ratio(),
            active(),
            section(Reach.Part.NOT_REACHABLE),
            section(Reach.Part.NOT_KNOWN),
            lacking(),
            apart(),
            clinics())
        .flatMap(List::stream)
        .toList();
  }

  private List<String> head() {
    List<String> names = card.clinics().keySet().stream().map(this::name).toList();
    String of =
        names.size() > NAMES_SHOWN
            ? "%d clinics".formatted(names.size())
            : String.join(", ", names);
    return List.of("Scorecard of %s, as of %s".formatted(of, card.scope().asOf()), "");
  }

  private List<String> ratio() {
    return List.of(
        share("Reachable by their number", card.reachable(), RoundingMode.DOWN)
            + "   asked: at least %s %%".formatted(plain(target.atLeast())),
        share("Not known", card.notKnown(), RoundingMode.UP)
            + "   allowed: at most %s %%".formatted(plain(target.atMostUnknown())),
        "");
  }

  private List<String> active() {
    List<String> lines = new ArrayList<>();
    lines.add(count("Living patients, seen lately", card.patients().size()));
    lines.add(share("  a number is recorded", card.numbered(), RoundingMode.DOWN));
    lines.add(share("  scanned lately", card.scanned(), RoundingMode.DOWN));
    lines.add(count("Not seen lately", card.notSeen()));
    lines.add(count("Dead", card.dead()));
    lines.add("");
    return lines;
  }

  private List<String> section(Reach.Part part) {
    List<String> lines = new ArrayList<>();
    lines.add(count(title(part), card.of(List.of(part)).size()));
    Stream.of(Reach.values())
        .filter(reach -> reach.part() == part && card.count(reach) > 0)
        .map(reach -> count("  " + words(reach), card.count(reach)))
        .forEach(lines::add);
    return lines;
  }

  private static String title(Reach.Part part) {
    return switch (part) {
      case REACHABLE -> "Reachable";
      case NOT_REACHABLE -> "Not reachable";
      case NOT_KNOWN -> "Not known";
      case APART -> "Not of this ratio";
    };
  }

  private static String words(Reach reach) {
    return switch (reach) {
      case REACHABLE -> "reachable";
      case NOT_REGISTERED -> "not registered";
      case NO_DETAILS -> "registered without phone and e-mail";
      case NOT_CONFIRMED -> "contact not confirmed lately";
      case OTHER_DETAILS -> "other phone and e-mail registered";
      case HOME_NOT_KNOWN -> "own clinic can't be told";
      case TWO_ANIMALS -> "one number, two animals";
      case KEEPER_NOT_KNOWN -> "who has the animal can't be told";
      case FORGOTTEN -> "details forgotten on request";
      case REGISTRY_NOT_KNOWN -> "registries' exports don't tell";
      case REFERRAL -> "referral: of another clinic";
      case IN_CARE -> "in an organisation's care";
      case NO_NUMBER -> "no number that can be read";
    };
  }

  /** How many each registry's exports leave open. */
  private List<String> lacking() {
    Map<String, Long> lacks =
        card.patients().stream()
            .flatMap(patient -> patient.lacking().stream().map(this::lack).distinct())
            .collect(Collectors.groupingBy(lack -> lack, TreeMap::new, Collectors.counting()));
    return lacks.entrySet().stream()
        .map(lack -> count("    " + lack.getKey(), lack.getValue()))
        .toList();
  }

  private String lack(NotJudged lack) {
    String why =
        switch (lack.reason()) {
          case EXPORT_TOO_OLD -> "export too old";
          case ACCOUNT_SLICE_ONLY -> "account slice only";
          case NEVER_EXPORTS -> "never exports";
        };
    return "%s: %s".formatted(name(lack.registry()), why);
  }

  private List<String> apart() {
    List<String> lines = new ArrayList<>(section(Reach.Part.APART));
    lines.add("");
    lines.add("Reachable, by who put the chip in");
    lines.add(implanted("  a clinic of the group", Told.YES));
    lines.add(implanted("  implanted elsewhere", Told.NO));
    lines.add(implanted("  not known", Told.NOT_KNOWN));
    lines.add("");
    return lines;
  }

  private String implanted(String title, Told told) {
    return share(title, card.reachable(p -> p.implanted() == told), RoundingMode.DOWN);
  }

  private List<String> clinics() {
    List<String> lines = new ArrayList<>();
    lines.add("Reachable, by clinic");
    card.clinics().keySet().forEach(clinic -> lines.add(clinic(clinic)));
    return lines;
  }

  private String clinic(OrganisationId clinic) {
    Predicate<Patient> here = patient -> patient.clinic().equals(clinic);
    return "%s   not known: %,d, visiting others: %,d"
        .formatted(
            share("  " + name(clinic), card.reachable(here), RoundingMode.DOWN),
            card.of(List.of(Reach.Part.NOT_KNOWN)).stream().filter(here).count(),
            card.some(here).filter(Patient::visiting).count());
  }

  private String name(OrganisationId id) {
    return directory.find(id).map(Organisation::name).orElse(id.value());
  }

  private static String count(String title, long count) {
    return "%-40s %,7d".formatted(title, count);
  }

  private static String share(String title, Share share, RoundingMode rounding) {
    String percent = share.percent(rounding).map(p -> p + " %").orElse("-");
    return "%s of %,7d %8s".formatted(count(title, share.part()), share.whole(), percent);
  }

  /** Why a target is missed, and what it takes. */
  static String missed(Share reachable, BigDecimal atLeast) {
    return "Expected at least %s %% reachable, but found %s %%: %,d of %,d"
        .formatted(
            plain(atLeast),
            reachable.percent(RoundingMode.DOWN).orElseThrow(),
            reachable.part(),
            reachable.whole());
  }

  /** Why a ratio says little. */
  static String notKnown(Share notKnown, BigDecimal atMost) {
    if (notKnown.whole() == notKnown.part()) {
      return "Expected patients whose registration can be judged, but found none; of %,d it is not known"
          .formatted(notKnown.part());
    }
    return "Expected at most %s %% not known, but found %s %%: %,d of %,d"
        .formatted(
            plain(atMost),
            notKnown.percent(RoundingMode.UP).orElseThrow(),
            notKnown.part(),
            notKnown.whole());
  }

  private static String plain(BigDecimal percent) {
    return percent.stripTrailingZeros().toPlainString();
  }
}
