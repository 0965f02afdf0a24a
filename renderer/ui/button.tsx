import { memo, type ReactNode, useCallback, useRef } from 'react';
import { Button as AriaButton } from 'react-aria-components';
import { KeyCap } from './key-cap.tsx';
import type { KeyId } from './keys/key-table.ts';

/** What a button may be given. */
export interface ButtonProps {
  readonly children: ReactNode;
  readonly onPress: () => void;
  /** `ink`: the one thing to do here. `bare`: no box until pointed at. */
  readonly look?: 'plain' | 'ink' | 'bare';
  /** Shown on a key cap in the button; the binding itself is made by `useKeys`. */
  readonly keyId?: KeyId;
  /** Its name, where the content has none. */
  readonly label?: string;
  readonly isDisabled?: boolean;
  readonly isAutoFocused?: boolean;
  readonly className?: string;
}

/** A press: pointer, touch, Enter or Space. */
export function Button({ onPress, ...look }: ButtonProps) {
  const latest = useRef(onPress);
  latest.current = onPress;
  const press = useCallback(() => latest.current(), []);
  return <DrawnButton {...look} onPress={press} />;
}

/** Drawn anew only where it looks otherwise: what it does is asked for when it is pressed. */
const DrawnButton = memo(function DrawnButton(props: ButtonProps) {
  const {
    children,
    onPress,
    look = 'plain',
    keyId,
    label,
    isDisabled = false,
    isAutoFocused = false,
  } = props;
  return (
    <AriaButton
      className={`btn ${look} ${props.className ?? ''}`}
      onPress={onPress}
      isDisabled={isDisabled}
      autoFocus={isAutoFocused}
      {...(label !== undefined && { 'aria-label': label })}
    >
      {children}
      {keyId && <KeyCap id={keyId} />}
    </AriaButton>
  );
});
