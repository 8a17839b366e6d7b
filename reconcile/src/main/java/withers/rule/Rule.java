package withers.rule;

import withers.finding.FindingKind;

/** One kind of finding, decided for one animal. Pure. */
interface Rule {

  FindingKind kind();

  Judgement judge(Dossier dossier);

  /** Whether nothing that comes after it is judged while it holds. */
  default boolean suspendsTheRest() {
    return false;
  }
}
