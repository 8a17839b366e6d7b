package withers.report.schedule.cli;

import java.util.Optional;
import java.util.function.Function;
import withers.report.schedule.postgres.Claims;
import withers.report.schedule.postgres.JobDatabase;
import withers.workspace.PasswordFile;
import withers.workspace.StoreSettings;
import withers.workspace.ThisProcess;
import withers.workspace.Workspace;

/** Where a workspace keeps what was done of its jobs. */
record JobBooks(Workspace workspace) {

  /** The database that several schedulers share, if the settings state one. */
  Optional<JobDatabase> database() {
    return workspace.settings().scheduleStore().map(this::open);
  }

  private JobDatabase open(StoreSettings store) {
    return JobDatabase.open(store, workspace.paths().root(), PasswordFile::read);
  }

  JobBook book() {
    return book(database());
  }

  JobBook book(Optional<JobDatabase> database) {
    Function<JobDatabase, JobBook> shared =
        opened ->
            new JobRows(new Claims(opened, ThisProcess.name()), opened.lease(), workspace.clock());
    return database.map(shared).orElseGet(() -> new JobFiles(workspace.paths().schedule()));
  }
}
