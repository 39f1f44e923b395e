package tramontane.desktop.internal.pages;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** What pages show is decided without widgets. */
class PagesArchitectureTest {

    @Test
    void noWidgets() {
        noClasses().should().dependOnClassesThat().resideInAnyPackage("org.eclipse..", "tramontane.desktop.internal.views..",
                "tramontane.desktop.internal.window..")
                .check(new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests())
                        .importPackages("tramontane.desktop.internal.pages"));
    }
}
