import { roles, type Role } from '../../../core/role.ts';
import { roleText as words } from '../../../words/texts.ts';
import { Choice } from '../../parts/choice/Choice.tsx';

export interface RoleChoiceProps {
  readonly label: string;
  readonly value: Role;
  readonly onChange: (role: Role) => void;
}

/** What a phone may do, one of the three. */
export const RoleChoice = ({ label, value, onChange }: RoleChoiceProps) => (
  <Choice<Role>
    label={label}
    lay="list"
    value={value}
    options={roles.map((role) => ({
      value: role,
      label: words.is[role],
      more: words.more[role],
    }))}
    onChange={onChange}
  />
);
