package tramontane.selection.desktop.internal;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class ArchitectureTest {

    private final JavaClasses all = new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tramontane.selection.desktop");

    @Test
    void theViewsKnowTheApiOnly() {
        classes().should().onlyDependOnClassesThat().resideInAnyPackage("java..", "tramontane.selection.desktop..", "tramontane.selection",
                "tramontane.catalogue", "tramontane.desktop", "tramontane.desktop.chart", "tramontane.analysis", "tramontane.model..", "tramontane.physics..",
                "org.osgi..", "org.eclipse..").check(all);
    }

    @Test
    void onlyViewsAndWhatOpensThemKnowWidgets() {
        noClasses().that().haveSimpleNameEndingWith("Presenter").or().areRecords().should().dependOnClassesThat()
                .resideInAnyPackage("org.eclipse.swt..", "org.eclipse.jface..", "org.eclipse.swtchart..").check(all);
    }
}
