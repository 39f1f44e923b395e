package tramontane.airflow.desktop.internal.path;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class ArchitectureTest {

    private static final JavaClasses OURS = new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tramontane.airflow.desktop.internal.path");

    @Test
    void onlyViewAndPainterKnowAboutWidgets() {
        noClasses().that().haveNameNotMatching(".*\\.(PathView|PathViewType|PathPainter)(\\$.*)?").should().dependOnClassesThat()
                .resideInAnyPackage("org.eclipse.swt..", "tramontane.desktop..").check(OURS);
    }

    @Test
    void onlyOneClassKnowsTheLayoutLibrary() {
        noClasses().that().haveSimpleNameNotStartingWith("LayeredPlacement").should().dependOnClassesThat()
                .resideInAnyPackage("org.eclipse.elk..", "org.eclipse.emf..").check(OURS);
    }

    @Test
    void anAnalysisIsKnownByItsFiguresOnly() {
        noClasses().should().dependOnClassesThat().resideInAnyPackage("tramontane.airflow.internal..", "tramontane.thermal..", "tramontane.engine..")
                .check(OURS);
    }
}
